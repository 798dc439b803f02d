import { CornerwiseError } from "../errors.ts";

const DEGREES = 180 / Math.PI;

/** How a movement and an angle go together: along a circle, or across a disc that does not stand square. */
export type PlayAngle = "swing" | "tilt";

/**
 * Angle of a movement on a circle.
 *
 * A swing is measured along the circle: angle = movement / radius. A tilt is the whole reading of a dial gauge in one turn
 * at that diameter: sin(angle) = reading / diameter.
 *
 * Units: mm in, degrees out.
 * Errors: `bad-request` for a movement below 0, a diameter not above 0, or more than one turn (a tilt: a right angle).
 */
export function playDegrees(mm: number, diameterMm: number, angle: PlayAngle = "swing"): number {
  notBelow0(mm, "mm");
  above0(diameterMm);
  const most = angle === "swing" ? diameterMm * Math.PI : diameterMm;
  if (mm > most) tooMuch(`a movement of ${mm} mm on a diameter of ${diameterMm} mm`);
  return (angle === "swing" ? (2 * mm) / diameterMm : Math.asin(mm / diameterMm)) * DEGREES;
}

/**
 * Movement on a circle for an angle; the other way round of `playDegrees`.
 *
 * Units: degrees in, mm out.
 * Errors: `bad-request` as there.
 */
export function playMm(degrees: number, diameterMm: number, angle: PlayAngle = "swing"): number {
  notBelow0(degrees, "degrees");
  above0(diameterMm);
  if (degrees > (angle === "swing" ? 360 : 90)) tooMuch(`an angle of ${degrees} degrees`);
  const radians = degrees / DEGREES;
  return angle === "swing" ? (radians * diameterMm) / 2 : Math.sin(radians) * diameterMm;
}

function notBelow0(value: number, name: string): void {
  if (Number.isFinite(value) && value >= 0) return;
  throw new CornerwiseError("bad-request", `The movement is ${value} ${name}; give a number from 0 on.`, {
    field: name,
  });
}

function above0(diameterMm: number): void {
  if (Number.isFinite(diameterMm) && diameterMm > 0) return;
  throw new CornerwiseError(
    "bad-request",
    `The diameter of the circle is ${diameterMm} mm; give a number above 0.`,
    { field: "diameter" },
  );
}

function tooMuch(what: string): never {
  throw new CornerwiseError(
    "bad-request",
    `There cannot be ${what}; look at the units of the movement and of the diameter.`,
    { field: "value" },
  );
}
