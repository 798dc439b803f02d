/**
 * A third set of invented sentences, as car owners would say them, over all families of complaints. They were written and
 * labelled before the reader was run on any of them. Marks as in told-sentences.ts (common practice, no source).
 *
 * At first sight: recall 0.730, precision 0.859. What was mended since is kinds of phrases and of grammar, so they are no
 * longer a measure of the next writer.
 */
export const THIRD: readonly (readonly [text: string, labels: string])[] = [
  // Noises
  [
    "Whenever I go over a sleeping policeman there's a dull thud from the back left.",
    "noise noise:clunk noise:humps noise:from-rear noise:from-left",
  ],
  [
    "Turning out of the supermarket car park the front end makes a crackling, popping racket.",
    "noise noise:click noise:turning-slowly noise:from-front ?noise:creak",
  ],
  [
    "It's dead quiet in town, but at 120 km/h there is a drone you can't talk over.",
    "noise noise:hum noise:above-110 ?-noise:speed-30-60",
  ],
  [
    "First thing in the morning the brakes give one big squeal and then nothing for the rest of the day.",
    "noise noise:squeal noise:first-move ?noise:cold ?noise:braking",
  ],
  [
    "Metal scraping on every wheel turn, louder with my foot on the brake.",
    "noise noise:scrape noise:metallic noise:once-per-turn noise:braking",
  ],
  [
    "There's a whistling that follows the revs, even when I'm parked.",
    "noise noise:whine noise:follows-engine noise:at-standstill",
  ],
  [
    "Something under the car goes clack every time I let the clutch in.",
    "noise noise:click noise:gear-change noise:from-middle ?noise:pulling-away",
  ],
  [
    "No sound at all until I pull away, then a nasty grinding from the rear.",
    "noise noise:grind noise:pulling-away noise:from-rear",
  ],
  [
    "The rattle is there on cobbles and stops as soon as I rest my foot on the brake.",
    "noise noise:rattle noise:small-bumps noise:brake-changes-it ?-noise:braking",
  ],
  [
    "I hear it only on left-hand bends: a growl from the right front wheel.",
    "noise noise:growl noise:turning-left noise:from-right noise:from-front ?noise:cornering ?-noise:constant",
  ],
  [
    "It groaned all winter when I turned the wheel standing still, since it got warmer it doesn't.",
    "noise noise:groan noise:steering-standstill noise:cold ?-noise:warm",
  ],
  ["A spring seems to twang when I'm reversing onto the drive.", "noise noise:twang noise:reversing"],
  [
    "Bangs like a hammer when one front wheel falls into a pothole, never on smooth roads.",
    "noise noise:bang noise:one-wheel-bump noise:from-front ?noise:clunk ?-noise:follows-surface",
  ],
  ["The squeaking isn't there unless it has been raining.", "noise noise:squeak noise:wet"],
  [
    "My son says it sounds like an aeroplane on the dual carriageway and it has got louder over the last month.",
    "noise noise:hum noise:above-110 noise:getting-worse ?noise:speed-80-110",
  ],
  // Shakes
  [
    "From 90 to 110 the steering wheel trembles in my hands, below and above that it's perfectly calm.",
    "shake shake:felt-steering-wheel shake:speed-80-110 shake:one-speed-only",
  ],
  [
    "When I brake coming off the motorway the whole front judders.",
    "shake shake:braking shake:from-front ?shake:braking-hard ?shake:above-110 ?shake:felt-whole-car",
  ],
  [
    "The car shudders as I pull away uphill, once rolling it is smooth.",
    "shake shake:pulling-away ?shake:accelerating",
  ],
  [
    "I can feel a buzzing through the floor when I accelerate hard, it goes as soon as I lift.",
    "shake shake:felt-seat-floor shake:accelerating -shake:lifting-off ?noise ?noise:hum ?noise:felt-seat-floor ?noise:accelerating ?-noise:lifting-off",
  ],
  [
    "It doesn't vibrate until I get past 100, from there on the seat tingles.",
    "shake shake:felt-seat-floor shake:above-110 ?shake:speed-80-110 ?-shake:speed-30-60 ?-shake:speed-60-80 ?-shake:below-30 ?-shake:speed-80-110",
  ],
  [
    "At the traffic lights with the engine running the whole car shakes, on the move there's nothing.",
    "shake shake:at-standstill shake:felt-whole-car",
  ],
  [
    "The pedal pulses under my foot every time I slow for a junction.",
    "shake shake:felt-brake-pedal shake:braking",
  ],
  [
    "Had the wheels balanced, made no odds, still wobbles at 60.",
    "shake shake:speed-80-110 tyres-fitted-lately tried-balancing",
  ],
  // Pull, wander
  ["If I let go of the wheel it slowly heads for the ditch on the right.", "pull pull:pull-right"],
  ["When I hit the brakes it darts to the left.", "pull pull:pull-left pull:braking ?pull:braking-hard"],
  ["Goes straight as an arrow until I brake, then it pulls right.", "pull pull:pull-right pull:braking"],
  [
    "We had new tyres put on the front and ever since it's been drifting left.",
    "pull pull:pull-left tyres-fitted-lately",
  ],
  ["Under power it tugs one way and off the throttle the other.", "pull pull:accelerating pull:lifting-off"],
  ["In a side wind it is all over the place and I'm forever correcting.", "wander"],
  ["It follows every rut in the road like a tram.", "wander"],
  [
    "The back end feels as if it steers by itself in long bends.",
    "wander wander:cornering ?pull ?wander:from-rear",
  ],
  // Steering
  ["I can waggle the steering wheel a good two inches before the car reacts.", "steering-play"],
  [
    "Parking has become a workout, the steering is so heavy.",
    "steering-heavy steering-heavy:steering-standstill",
  ],
  [
    "On cold mornings I can hardly turn the wheel, after ten minutes it's normal.",
    "steering-heavy steering-heavy:cold",
  ],
  ["On a straight road my steering wheel points at two o'clock.", "steering-off-centre"],
  ["After a corner I have to wind the wheel back to the middle myself.", "steering-poor-return"],
  ["A yellow steering wheel symbol has lit up on the dash.", "steering-lamp"],
  ["The wheel gets ripped out of my hands when I hit a rut.", "kickback ?one-wheel-bump ?small-bumps"],
  // Ride, height, lamps
  ["It nods forward terribly when I stop at the lights.", "dives-rolls dives-rolls:braking"],
  ["In roundabouts the body tips over so far my wife feels sick.", "dives-rolls dives-rolls:cornering"],
  ["After a hump it carries on bobbing up and down three or four times.", "bouncy bouncy:humps"],
  [
    "With the caravan on, the rear crashes down onto its stops over every hump.",
    "bottoms-out bottoms-out:humps bottoms-out:loaded ?heavy-load-lately ?noise ?noise:bang ?noise:from-rear ?noise:humps ?noise:loaded ?bottoms-out:from-rear",
  ],
  ["The car rides like a plank since the lowering springs went in.", "harsh-ride suspension-done-lately"],
  [
    "Overnight the left rear drops until the tyre is nearly touching the arch.",
    "sits-low sits-low:from-left sits-low:from-rear ?ride-height-low@rear-left ?sinks-overnight@rear-left ?sits-low:came-suddenly ?tyre-rub-marks-seen@rear-left",
  ],
  ["It leans to the driver's side when parked on level ground.", "sits-low"],
  ["The message 'air suspension fault' keeps coming up.", "suspension-lamp"],
  // Brakes
  [
    "After a short trip the front right rim is so hot you can't touch it.",
    "brake-hot brake-hot:from-front brake-hot:from-right ?wheel-hotter@front-right",
  ],
  ["The car feels held back, as if the handbrake were on, and there's a burning smell.", "brake-hot"],
  ["I really have to stamp on the pedal and even then it barely slows down.", "brake-weak"],
  ["Going down the mountain the brakes faded away to nothing.", "brake-weak ?brake-weak:warm"],
  // Leaks and tyres
  [
    "There's brown oil running down the shock absorber on the left rear.",
    "fluid-leak fluid-leak:from-left fluid-leak:from-rear ?damper-oil@rear-left",
  ],
  [
    "Black grease is splattered all over the inside of the front right wheel.",
    "fluid-leak fluid-leak:from-front fluid-leak:from-right ?outer-boot-torn@front-right ?fluid-leak:leaks-grease",
  ],
  [
    "The tyres on the front axle are worn right down on the outer edges.",
    "tyre-wear tyre-wear:wear-outer-edge tyre-wear:from-front ?tyre-wear:wear-both-shoulders ?tyre-outer-edge-worn-seen",
  ],
  [
    "Run your hand over the rear tyres and you feel the blocks standing up like saw teeth.",
    "tyre-wear tyre-wear:wear-feathered tyre-wear:from-rear ?tread-edges-high-inward ?tread-edges-high-outward ?tyre-cupping-felt",
  ],
  // What was done, what it is not, what means nothing
  [
    "They put new shocks on the back in August. Hasn't helped one bit, it still knocks.",
    "noise noise:clunk suspension-done-lately tried-dampers",
  ],
  [
    "I've had the tracking done twice and it still won't run straight.",
    "wander alignment-done-lately tried-alignment ?pull",
  ],
  [
    "The car was in a garage for three weeks, they couldn't find anything.",
    "looked-over ?under-car-work-lately ?long-standing",
  ],
  [
    "It doesn't pull, it doesn't shake, it just clonks when I drive up the kerb.",
    "-pull -shake noise noise:clunk noise:one-wheel-bump",
  ],
  ["Could I have a courtesy car while mine is in, please? I left my number at the desk.", ""],
  [
    "My neighbour's car makes a funny noise too, but that is another story; mine just needs its yearly service.",
    "?noise",
  ],
];
