/**
 * Sentences invented and labelled after the reading was built, and not used to mend it: what is measured on them is what
 * to expect of the next writer. Marks as in told-sentences.ts.
 *
 * First measured: recall 0.914, precision 0.898. One defect that they brought to light was too grave to leave and has
 * been mended since: "I haven't noticed any pulling" was read as a pull.
 */
export const HELD_OUT: readonly (readonly [text: string, labels: string])[] = [
  [
    "Morning, there's a rattly sound coming from the rear when I drive over cobbles.",
    "noise noise:rattle noise:from-rear noise:small-bumps",
  ],
  [
    "The front end thuds whenever one wheel drops in a hole.",
    "noise noise:clunk noise:from-front noise:one-wheel-bump",
  ],
  ["Loud screech as I come to a stop.", "noise noise:squeal noise:braking ?noise:light-braking"],
  [
    "Droning at 110 km/h, nothing at 60.",
    "noise noise:hum noise:speed-80-110 noise:above-110 ?-noise:speed-30-60 ?-noise:speed-60-80",
  ],
  [
    "Vibration starts at 55 mph and gets worse with speed.",
    "shake shake:speed-80-110 shake:above-110 shake:rises-with-speed",
  ],
  ["My steering wheel trembles slightly on the motorway.", "shake shake:felt-steering-wheel shake:above-110"],
  [
    "It judders badly in reverse when the clutch is coming up.",
    "shake shake:reversing shake:gear-change ?shake:pulling-away",
  ],
  ["The car veers to the right if I brake hard.", "pull pull:pull-right pull:braking-hard ?pull:braking"],
  ["Pulls slightly left, more so in the wet.", "pull pull:pull-left"],
  ["Goes all over the lane on rutted roads, feels vague.", "wander wander:small-bumps"],
  ["There is some free play in the steering wheel.", "steering-play"],
  ["Turning the wheel takes two hands since yesterday, very stiff.", "steering-heavy"],
  [
    "The wheel is crooked when I go straight, tracking was set last week.",
    "steering-off-centre alignment-done-lately",
  ],
  ["The rear sags with a full boot.", "sits-low sits-low:from-rear sits-low:loaded"],
  ["Leans over in roundabouts more than it used to.", "dives-rolls dives-rolls:cornering"],
  ["Ride is harsh, crashes into potholes.", "harsh-ride ?bottoms-out ?bottoms-out:one-wheel-bump"],
  [
    "Brakes smell hot on the left front and the wheel is dragging.",
    "brake-hot brake-hot:from-left brake-hot:from-front ?wheel-hotter@front-left",
  ],
  ["It takes forever to stop, the pedal feels spongy.", "brake-weak"],
  [
    "Shock absorber is leaking, rear right.",
    "fluid-leak fluid-leak:from-rear fluid-leak:from-right ?damper-oil@rear-right",
  ],
  [
    "Both rear tyres are bald on the inside.",
    "tyre-wear tyre-wear:wear-inner-edge tyre-wear:from-rear ?tyre-inner-edge-worn-seen",
  ],
  [
    "There are flat spots on one tyre after locking up.",
    "tyre-wear tyre-wear:wear-flat-spot tyre-wear:wear-one-tyre ?tyre-flat-spot-seen",
  ],
  ["The squeak has disappeared after they greased it.", "-noise -noise:squeak"],
  ["No more vibration since the wheels were balanced.", "-shake tyres-fitted-lately"],
  [
    "It doesn't knock over speed bumps, just on rough roads.",
    "noise noise:clunk noise:small-bumps -noise:humps",
  ],
  ["I haven't noticed any pulling or shaking.", "-pull -shake"],
  ["Nothing when cornering, only straight ahead: a hum.", "noise noise:hum -noise:cornering"],
  [
    "I'm not sure whether the creak is at the front or the back.",
    "noise noise:creak ?noise:from-front ?noise:from-rear",
  ],
  [
    "It possibly comes from the right front, a tick tick tick.",
    "noise noise:click noise:from-right noise:from-front",
  ],
  [
    "clunk clunk clunk everytime i turn full lock in carpark",
    "noise noise:clunk noise:turning-slowly ?noise:steering-standstill",
  ],
  ["shimmys at 65 then smooths out", "shake shake:speed-80-110 shake:one-speed-only"],
  [
    "Noticed a grinding while decelerating downhill, goes quiet on the gas.",
    "noise noise:grind noise:lifting-off -noise:accelerating ?noise:braking",
  ],
  [
    "We went over a kerb and since then the front left clicks.",
    "kerb-strike noise noise:click noise:from-front noise:from-left",
  ],
  [
    "The ball joints were replaced and now there is a squeak on bumps.",
    "arms-done-lately noise noise:squeak noise:small-bumps",
  ],
  ["Had a puncture repaired on Monday and it wobbles since.", "tyres-fitted-lately shake"],
  ["It was towed in after a crash.", "under-car-work-lately collision"],
  [
    "I was towing a trailer full of gravel last weekend, now the tail is low.",
    "heavy-load-lately sits-low sits-low:from-rear ?ride-height-low ?sits-low:loaded ?under-car-work-lately",
  ],
  [
    "The exhaust was replaced last month and it buzzes at idle.",
    "engine-work-lately noise noise:hum noise:at-standstill ?under-car-work-lately ?noise:follows-engine ?shake ?shake:at-standstill",
  ],
  ["Bump steer is terrible on country lanes.", "kickback"],
  ["The power steering warning came on and the steering went heavy.", "steering-lamp steering-heavy"],
  [
    "When I lift off at 80 km/h there's a whistle from the back axle.",
    "noise noise:whine noise:lifting-off noise:from-rear noise:speed-60-80 noise:speed-80-110",
  ],
  ["Please call me back on my mobile.", ""],
  ["I left the spare key at the front desk.", ""],
  ["My windscreen has a crack in it on the passenger side.", ""],
  ["Rear left: clear play at 12 and 6, none at 3 and 9.", "play-12-6@rear-left -play-3-9@rear-left"],
  ["Bounce test failed front right.", "bounce-too-many@front-right"],
];
