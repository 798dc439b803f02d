/**
 * A fourth set of invented sentences, written and labelled after the third was mended and before the reader was run on
 * any of them. Marks as in told-sentences.ts (common practice, no source).
 *
 * At first sight: recall 0.683, precision 0.812, so the words that owners find for a thing are far from exhausted. Mended
 * by since, as the third set.
 */
export const FOURTH: readonly (readonly [text: string, labels: string])[] = [
  [
    "My car groans like an old door whenever I turn into a parking space.",
    "noise noise:groan noise:turning-slowly ?noise:creak ?noise:steering-standstill",
  ],
  [
    "There's a tinny rattle from underneath when the engine is idling, gone as soon as I give it some revs.",
    "noise noise:rattle noise:metallic noise:from-middle noise:at-standstill ?noise:follows-engine ?-noise:follows-engine",
  ],
  [
    "A deep hum creeps in from about 50 km/h and gets stronger the faster I drive, the mechanic swapped both front hubs to no avail.",
    "noise noise:hum noise:speed-30-60 noise:speed-60-80 noise:speed-80-110 noise:above-110 noise:rises-with-speed bearing-done-lately tried-bearings",
  ],
  [
    "No knocking until both front wheels go over a speed bump.",
    "noise noise:clunk noise:humps ?noise:from-front",
  ],
  [
    "The brakes squeak when I roll gently up to a red light, if I brake hard they're silent.",
    "noise noise:squeak noise:light-braking noise:braking -noise:braking-hard",
  ],
  [
    "Single clonk from the nearside front when I set off, then it is quiet.",
    "noise noise:clunk noise:from-front noise:pulling-away ?noise:settles-once",
  ],
  [
    "Howling from the back axle when I take my foot off the gas at 90.",
    "noise noise:whine noise:from-rear noise:lifting-off noise:speed-80-110",
  ],
  [
    "It rubs at full lock to the right with four people aboard.",
    "noise noise:scrape noise:turning-slowly noise:turning-right noise:loaded",
  ],
  [
    "Over cobbles something chatters in the dash, not on tarmac.",
    "noise noise:rattle noise:small-bumps ?-noise:follows-surface ?noise:follows-surface",
  ],
  [
    "The wheel shakes left and right at around 75 mph, new tyres didn't cure it.",
    "shake shake:felt-steering-wheel shake:above-110 tyres-fitted-lately tried-tyres",
  ],
  [
    "Brakes vibrate so much on long descents that my teeth chatter.",
    "shake shake:braking ?shake:felt-whole-car ?shake:warm",
  ],
  [
    "A shiver runs through the car when I let the clutch bite.",
    "shake shake:pulling-away ?shake:gear-change ?shake:felt-whole-car",
  ],
  [
    "It vibrates under load in third and stops when I coast.",
    "shake shake:accelerating -shake:lifting-off ?shake:gear-change",
  ],
  ["On the flat the car drifts towards the passenger side.", "pull"],
  [
    "Brake gently and it's fine, brake hard and it yanks to the right.",
    "pull pull:pull-right pull:braking-hard ?-pull:braking ?pull:braking ?-pull:light-braking",
  ],
  ["I have to keep correcting on the motorway, it never holds a straight line.", "wander ?wander:above-110"],
  ["There's a lot of slop before the wheels follow the steering.", "steering-play"],
  [
    "The power steering seems to give up when I'm parking.",
    "steering-heavy steering-heavy:steering-standstill",
  ],
  ["Driving straight, the logo on my steering wheel is tilted to the left.", "steering-off-centre"],
  ["It stays on lock after a bend unless I steer back by hand.", "steering-poor-return"],
  ["The EPS lamp lights up now and then.", "steering-lamp ?steering-heavy:comes-and-goes"],
  ["Every expansion joint sends a jolt up the steering column into my hands.", "kickback ?small-bumps"],
  ["Lane changes make the whole body sway.", "dives-rolls dives-rolls:cornering"],
  [
    "The tail keeps bobbing after each crest, both rear shocks are two months old.",
    "bouncy suspension-done-lately ?bouncy:from-rear ?bouncy:humps",
  ],
  [
    "With the boot full it scrapes its belly on every ramp.",
    "bottoms-out bottoms-out:loaded ?bottoms-out:humps ?bottoms-out:one-wheel-bump ?noise ?noise:scrape ?noise:loaded ?noise:from-middle ?noise:humps",
  ],
  ["The suspension is rock hard, my back hurts after every drive.", "harsh-ride"],
  [
    "The right rear corner hangs lower than the left.",
    "sits-low sits-low:from-right sits-low:from-rear ?ride-height-low@rear-right",
  ],
  ["A dashboard message says to stop, vehicle too low.", "suspension-lamp"],
  [
    "The left front wheel smokes and stinks after ten miles.",
    "brake-hot brake-hot:from-left brake-hot:from-front ?brake-hot:warm",
  ],
  ["I have to pump the pedal twice before it bites.", "brake-weak"],
  [
    "Drops of oil under the right rear wheel every morning.",
    "fluid-leak fluid-leak:from-right fluid-leak:from-rear",
  ],
  [
    "My rear tyres are bald in the middle although I check the pressures.",
    "tyre-wear tyre-wear:wear-centre tyre-wear:from-rear ?tyre-centre-worn-seen",
  ],
  [
    "I clouted a kerb while parking last Sunday. Now it pulls to the left.",
    "kerb-strike pull pull:pull-left",
  ],
  [
    "The knock went away after they tightened the link, but now it's back.",
    "noise noise:clunk ?arms-done-lately",
  ],
  [
    "I don't hear it on smooth asphalt, only on rough lanes, a dull thumping from the right.",
    "noise noise:from-right noise:small-bumps ?noise:clunk ?noise:thump ?-noise:follows-surface ?noise:follows-surface ?-noise:constant",
  ],
  [
    "Neither the new discs nor the new pads made any difference to the judder.",
    "shake brakes-done-lately tried-brakes",
  ],
  ["It hums until I steer to the left.", "noise noise:hum -noise:turning-left"],
  ["Please check the air conditioning and top up the washer fluid.", ""],
  ["The key is under the mat on the driver's side.", ""],
  ["I turned the radio off and there was nothing to hear at all.", "?-noise"],
];
