/**
 * A fifth set of invented sentences, written and labelled after the fourth was mended and before the reader was run on
 * any of them. Marks as in told-sentences.ts (common practice, no source).
 *
 * At first sight: recall 0.828, precision 0.898. Mended by since, as the third and fourth set.
 */
export const FIFTH: readonly (readonly [text: string, labels: string])[] = [
  [
    "A sort of scuffing comes from the left rear when I go round roundabouts.",
    "noise noise:scrape noise:from-left noise:from-rear noise:turning-slowly ?noise:cornering",
  ],
  [
    "It sounds as though somebody is knocking on the floor with a mallet whenever I drive on rough tracks.",
    "noise noise:clunk noise:small-bumps ?noise:from-middle ?noise:bang ?noise:felt-seat-floor",
  ],
  [
    "You hear nothing until you get to about 70 mph and then it howls.",
    "noise noise:whine noise:above-110 ?noise:speed-80-110 ?-noise:speed-30-60 ?-noise:speed-60-80 ?-noise:speed-80-110 ?-noise:below-30",
  ],
  [
    "Front brakes grind horribly, the pads were replaced only last month.",
    "noise noise:grind noise:from-front noise:braking brakes-done-lately",
  ],
  [
    "The steering wheel wobbles from side to side at 50 and settles again at 60.",
    "shake shake:felt-steering-wheel shake:speed-80-110 shake:one-speed-only ?-shake:speed-80-110 ?shake:speed-60-80",
  ],
  [
    "There is a vibration through the brake pedal, worst after coming down a long hill.",
    "shake shake:felt-brake-pedal shake:warm ?shake:braking ?shake:braking-hard",
  ],
  [
    "Setting off in reverse makes the whole thing shudder.",
    "shake shake:reversing shake:felt-whole-car ?shake:pulling-away",
  ],
  ["The car keeps tugging to the left even on a level road.", "pull pull:pull-left ?pull:constant"],
  ["It steers to the right by itself as soon as I touch the brakes.", "pull pull:pull-right pull:braking"],
  ["Motorway driving is tiring because the car never stays in its lane.", "wander ?wander:above-110"],
  ["I can turn the wheel quite a bit and nothing happens.", "steering-play"],
  [
    "Steering has gone stiff in both directions and there's a squeal when I turn it at a standstill.",
    "steering-heavy noise noise:squeal noise:steering-standstill ?noise:at-standstill ?steering-heavy:steering-standstill",
  ],
  ["My steering wheel isn't straight any more since I hit that kerb.", "steering-off-centre kerb-strike"],
  ["It won't straighten up by itself when I come out of a junction.", "steering-poor-return"],
  ["Hitting a bump mid-corner jerks the wheel in my hands.", "kickback ?small-bumps ?cornering"],
  ["It wallows like a ship over long waves in the road.", "bouncy ?bouncy:humps ?bouncy:small-bumps"],
  [
    "The rear thumps onto the bump stops with two kids in the back.",
    "bottoms-out bottoms-out:loaded ?noise ?noise:thump ?noise:from-rear ?noise:clunk ?noise:loaded",
  ],
  [
    "The car has sunk on the passenger side overnight.",
    "sits-low ?sinks-overnight ?sits-low:came-suddenly ?ride-height-low",
  ],
  [
    "Since the pads were changed the left rear wheel gets boiling hot.",
    "brakes-done-lately brake-hot brake-hot:from-left brake-hot:from-rear ?wheel-hotter@rear-left",
  ],
  ["The pedal sinks slowly to the floor at the lights.", "brake-weak ?brake-pedal-sinks"],
  [
    "I found an oily film on the inside of the front left tyre.",
    "fluid-leak fluid-leak:from-front fluid-leak:from-left ?fluid-leak:leaks-oil",
  ],
  [
    "Both front tyres are feathered, and the tracking was done in spring without any effect.",
    "tyre-wear tyre-wear:wear-feathered tyre-wear:from-front alignment-done-lately tried-alignment",
  ],
  [
    "It doesn't rattle on good roads and it doesn't rattle when cold.",
    "?noise ?-noise:follows-surface -noise:cold ?-noise ?noise:rattle ?-noise:rattle",
  ],
  [
    "We had the ball joints done, but the clunk over drain covers hasn't gone away.",
    "arms-done-lately tried-arms noise noise:clunk noise:small-bumps",
  ],
  ["Could you also look at the dent in my left door?", ""],
];
