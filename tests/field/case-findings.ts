/**
 * What was checked and what decided in each case, as findings of the knowledge: read off the case's own text by hand.
 * "!" marks what was looked at and not found. Cases whose source tells of no check are left out.
 */
export const CASE_FINDINGS: Readonly<Record<string, readonly string[]>> = {
  c003: ["lower-arm-rear-bush-split@front"],
  c005: ["lower-arm-rear-bush-split@front"],
  c010: ["stone-in-shield-seen@rear-right"],
  c019: ["differential-bolt-loose@rear"],
  c024: ["noise-heard-at-corner@rear-right", "wheel-spin-rough@rear-right"],
  c026: ["spring-broken-seen@front"],
  c027: ["tyre-bulge-seen@front", "tyre-cords-seen@front"],
  c030: [
    "!wheel-nuts-loose-found@front",
    "!play-3-9@front",
    "!play-12-6@front",
    "!tie-rod-end-play@front",
    "!drop-arm-joint-play@front",
    "idler-arm-play@front",
  ],
  c032: ["!play-12-6@rear-right", "!wheel-spin-rough@rear-right", "heat-shield-rings@car"],
  c034: ["play-12-6@front", "lower-ball-joint-play@front"],
  c037: ["caliper-bolt-loose-found"],
  c038: ["subframe-bolt-loose-felt@front"],
  c039: ["!exhaust-leak-at-flex@car", "engine-mount-parted@front"],
  c041: ["!rim-runout-measured@front-right", "rim-runout-measured@front-left", "rim-damage-seen@front-left"],
  c042: ["anti-roll-bar-clamp-loose-seen@front"],
  c049: ["tyre-bulge-seen@front", "tyre-inner-edge-worn-seen@front", "camber-negative-over@front"],
  c059: ["toe-in-over@front"],
  c060: ["leaf-main-broken-seen@rear-right"],
  c063: ["!wheel-nuts-loose-found@front", "centring-ring-missing-seen@front"],
  c064: ["damper-lower-fixing-loose@rear-right"],
  c070: ["lower-ball-joint-pin-loose@front-right"],
};
