/**
 * A second set of sentences, invented and labelled after the reading was built, and never used to mend it: what is
 * measured on them is what to expect of the next writer. Marks as in told-sentences.ts.
 */
export const HELD_OUT: readonly (readonly [text: string, labels: string])[] = [
  [
    "Hi, my car has developed a knocking sound from the front when I go over rough ground, mostly on the left.",
    "noise noise:clunk noise:from-front noise:from-left noise:small-bumps",
  ],
  [
    "Every time I reverse out of my drive there is a clunk from underneath.",
    "noise noise:clunk noise:reversing noise:from-middle",
  ],
  [
    "Bit of a wobble at 70 on the motorway, fine below that.",
    "shake shake:speed-80-110 shake:above-110 ?shake:one-speed-only ?shake:felt-steering-wheel",
  ],
  [
    "Steering shakes like mad when I brake from speed, feels like warped rotors.",
    "shake shake:felt-steering-wheel shake:braking-hard ?shake:braking",
  ],
  [
    "I notice a loud humming noise at around 50 mph which gets quieter when I turn right.",
    "noise noise:hum noise:speed-60-80 noise:speed-80-110 -noise:turning-right ?noise:turning-slowly",
  ],
  ["The car drifts to the left on a flat road with my hands off the wheel.", "pull pull:pull-left"],
  [
    "My mechanic says the bushes are shot but I only hear a squeak on speed humps.",
    "noise noise:squeak noise:humps ?-noise:constant",
  ],
  [
    "Strange popping from the front right when I turn into my driveway.",
    "noise noise:click noise:from-front noise:from-right noise:turning-slowly",
  ],
  [
    "Horrible scraping noise from one wheel after driving on a gravel road.",
    "noise noise:scrape ?noise:small-bumps ?noise:metallic",
  ],
  [
    "It feels floaty over crests and the back keeps bouncing after a bump.",
    "bouncy ?bouncy:humps ?bouncy:from-rear ?small-bumps",
  ],
  ["Brake pedal is soft and goes nearly to the floor.", "brake-weak"],
  [
    "Pedal vibrates under hard braking but the steering wheel does not.",
    "shake shake:felt-brake-pedal shake:braking-hard -shake:felt-steering-wheel ?shake:braking",
  ],
  [
    "Van pulls right when I put my foot down and left when I let off.",
    "pull pull:pull-right pull:pull-left pull:accelerating pull:lifting-off",
  ],
  [
    "rear tires look scalloped and there is a roar on the highway",
    "tyre-wear tyre-wear:wear-cupped tyre-wear:from-rear noise noise:roar noise:above-110 ?tyre-cupping-felt",
  ],
  [
    "Tyre guy said the outer shoulders are wearing fast on the front.",
    "tyre-wear tyre-wear:wear-outer-edge tyre-wear:from-front ?tyre-wear:wear-both-shoulders ?tyre-outer-edge-worn-seen",
  ],
  [
    "Steering got really stiff this morning and the EPS light is on.",
    "steering-heavy steering-lamp ?steering-heavy:cold",
  ],
  [
    "You have to hold the wheel slightly to the right to go straight.",
    "steering-off-centre ?pull ?pull:pull-left",
  ],
  [
    "Steering wheel stays where I leave it after a bend, it won't come back to straight by itself.",
    "steering-poor-return",
  ],
  [
    "There's a dead spot in the middle, I can move the wheel an inch before anything happens.",
    "steering-play",
  ],
  ["It feels twitchy on the motorway, especially when it is windy.", "wander ?wander:above-110"],
  [
    "Hit a huge pothole last night, now the steering wheel vibrates at about 60 mph.",
    "pothole-strike shake shake:felt-steering-wheel shake:speed-80-110",
  ],
  [
    "Slid into the kerb in the snow. It now pulls left and the tyre is rubbing.",
    "kerb-strike snow-mud pull pull:pull-left noise noise:scrape",
  ],
  [
    "They replaced both front struts last week and ever since there is a boing when I park.",
    "suspension-done-lately noise noise:twang noise:steering-standstill",
  ],
  [
    "Had four new tyres and an alignment, but it still shimmies around 100 km/h.",
    "tyres-fitted-lately alignment-done-lately shake shake:speed-80-110",
  ],
  [
    "Since the gearbox was rebuilt it shudders when setting off.",
    "engine-work-lately shake shake:pulling-away",
  ],
  [
    "The car stood all winter and the brakes now grind for the first few metres.",
    "long-standing noise noise:grind noise:first-move ?noise:braking",
  ],
  ["Someone reversed into my front wheel and now the car crabs.", "collision pull"],
  [
    "It was fine until they changed the pads, now it squeals like a pig.",
    "brakes-done-lately noise noise:squeal",
  ],
  ["No vibration at all under 80 km/h.", "-shake:below-30 -shake:speed-30-60 -shake:speed-60-80"],
  [
    "I used to hear a clicking on full lock but that has gone now.",
    "-noise ?-noise:click ?-noise:turning-slowly",
  ],
  [
    "It does not make any noise on smooth roads.",
    "?noise ?-noise:follows-surface ?noise:small-bumps ?noise:follows-surface ?-noise",
  ],
  ["There is no play and no noise, but it wanders.", "-noise wander ?-steering-play"],
  ["Not pulling, not shaking, just a droning sound.", "-pull -shake noise noise:hum"],
  [
    "The clonk is worse when it's cold and disappears once the car is warmed up.",
    "noise noise:clunk noise:cold -noise:warm",
  ],
  ["It isn't a knock, more of a rattle.", "noise noise:rattle -noise:clunk"],
  [
    "I don't feel it through the wheel, only in the seat.",
    "?shake:felt-seat-floor ?-shake:felt-steering-wheel",
  ],
  [
    "Could be my imagination, but I think there is a faint whine above 50.",
    "noise noise:whine noise:speed-80-110 noise:above-110 ?noise:speed-60-80",
  ],
  ["Noise comes from the back left I reckon, hard to tell.", "noise noise:from-rear noise:from-left"],
  ["A grinding when it's wet, nothing in the dry.", "noise noise:grind noise:wet -noise:when-dry"],
  [
    "the creak happens mainly when its cold and goin over speed bumps slowly",
    "noise noise:creak noise:cold noise:humps ?noise:below-30",
  ],
  [
    "clunk from rear when changing from reverse to drive",
    "noise noise:clunk noise:from-rear noise:gear-change ?noise:reversing",
  ],
  [
    "WHEEL BEARING NOISE FRONT LEFT GETTING LOUDER EVERY DAY",
    "noise noise:from-front noise:from-left noise:getting-worse",
  ],
  ["shuddering under load uphill around 40 to 60 kmh", "shake shake:accelerating shake:speed-30-60"],
  [
    "The back end feels loose in crosswinds and sways in corners.",
    "wander dives-rolls dives-rolls:cornering ?dives-rolls:from-rear ?wander:cornering",
  ],
  [
    "Burning smell from the rear right wheel after a motorway run, rim too hot to touch.",
    "brake-hot brake-hot:from-rear brake-hot:from-right ?wheel-hotter@rear-right",
  ],
  [
    "Oil all over the inside of the left front wheel.",
    "fluid-leak fluid-leak:from-left fluid-leak:from-front",
  ],
  [
    "It scrapes the floor over speed bumps with four people in the car.",
    "bottoms-out bottoms-out:humps bottoms-out:loaded ?noise ?noise:scrape ?noise:humps ?noise:loaded",
  ],
  [
    "One corner of the car is lower than the others, the back right.",
    "sits-low sits-low:from-rear sits-low:from-right ?ride-height-low@rear-right",
  ],
  ["Jarring ride since I put stiffer springs on.", "harsh-ride suspension-done-lately"],
  [
    "I get a kick through the steering wheel when I hit a bump in a corner.",
    "kickback ?shake:small-bumps ?small-bumps ?cornering",
  ],
  [
    "Can the noise be heard when stationary? No, only when moving.",
    "noise ?-noise:at-standstill ?noise:at-standstill",
  ],
  [
    "I turned right onto the main road and then heard a bang from the left rear.",
    "noise noise:bang noise:from-left noise:from-rear ?noise:turning-right",
  ],
  ["My wife left the lights on so the battery went flat.", ""],
  ["Need a price for a set of four winter tyres please.", ""],
  ["Air conditioning is not cold any more.", ""],
  ["Could you look at the scratch on the right rear door?", ""],
  [
    "Knocking when going slow over cobblestones; the steering wheel is straight and it brakes without pulling.",
    "noise noise:clunk noise:small-bumps -pull ?noise:below-30 ?-pull:braking",
  ],
  [
    "Ticking in time with the wheels from the rear, speeds up as I speed up.",
    "noise noise:click noise:once-per-turn noise:from-rear noise:rises-with-speed",
  ],
  [
    "Lower arm rear bush torn on the front left.",
    "lower-arm-rear-bush-split@front-left ?lower-arm-rear-bush-perished@front-left",
  ],
  ["FR damper leaking oil.", "fluid-leak fluid-leak:from-front fluid-leak:from-right damper-oil@front-right"],
  ["Track rod end has excessive play, nearside front.", "tie-rod-end-play"],
  ["Spring broken rear left.", "spring-broken-seen@rear-left"],
];
