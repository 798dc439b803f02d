/**
 * Sentences as owners, drivers and mechanics write them, invented for this test, each with what a careful reader of the
 * trade would note down. Labels were set from the sentence alone (common practice, no source).
 *
 * The contexts of work without effect and of a look that found nothing came later; where a sentence tells of one it may be
 * noted.
 *
 * Marks   "noise" present, "-noise" absent, "?noise" may be noted or not (either state).
 */
export const TOLD: readonly (readonly [text: string, labels: string])[] = [
  // Plain noises
  ["There is a clunk over speed bumps.", "noise noise:clunk noise:humps"],
  [
    "I hear a knocking noise from the front left on rough roads.",
    "noise noise:clunk noise:from-front noise:from-left noise:small-bumps",
  ],
  ["cluncking from the back over potholes", "noise noise:clunk noise:from-rear noise:one-wheel-bump"],
  ["The suspension creaks like an old bed when I go over speed humps.", "noise noise:creak noise:humps"],
  ["Brakes squeal when I slow down gently.", "noise noise:squeal noise:braking ?noise:light-braking"],
  ["A horrible grinding when braking.", "noise noise:grind noise:braking"],
  ["There's a humming noise that gets louder with speed.", "noise noise:hum noise:rises-with-speed"],
  [
    "Droning from the rear right, worse the faster I go.",
    "noise noise:hum noise:from-rear noise:from-right noise:rises-with-speed",
  ],
  [
    "Clicking on full lock when pulling away.",
    "noise noise:click noise:turning-slowly noise:pulling-away ?outer-joint-clicks-in-circle",
  ],
  [
    "Clicks when I turn left, nothing when turning right.",
    "noise noise:click noise:turning-left -noise:turning-right ?noise:turning-slowly",
  ],
  ["Something rattles on cobbles.", "noise noise:rattle noise:small-bumps"],
  ["Metallic rattle at idle.", "noise noise:rattle noise:metallic noise:at-standstill ?noise:follows-engine"],
  [
    "A groaning sound when I turn the steering wheel while parked.",
    "noise noise:groan noise:steering-standstill ?noise:felt-steering-wheel ?noise:turning-slowly",
  ],
  [
    "Boing from the front when parking, like a spring being let go.",
    "noise noise:twang noise:from-front noise:steering-standstill",
  ],
  [
    "Loud bang from the rear when I put it in reverse.",
    "noise noise:bang noise:from-rear noise:gear-change ?noise:reversing",
  ],
  ["It squeaks over every small bump, like a rusty hinge.", "noise noise:squeak noise:small-bumps"],
  [
    "whining noise when I lift off the throttle on the motorway",
    "noise noise:whine noise:lifting-off noise:above-110",
  ],
  ["Rubbing noise on full lock only.", "noise noise:scrape noise:turning-slowly ?-noise:constant"],
  [
    "Thump thump thump at low speed, like a flat tyre.",
    "noise noise:thump noise:below-30 noise:once-per-turn",
  ],
  [
    "a low rumble from under the floor that stays the same in neutral",
    "noise noise:growl noise:from-middle noise:unchanged-in-neutral ?noise:felt-seat-floor",
  ],
  ["the brakes make a scraping sound in the wet", "noise noise:scrape noise:wet ?noise:braking"],
  [
    "Chirping that goes away when I touch the brake pedal.",
    "noise noise:squeak noise:brake-changes-it ?noise:braking ?noise:felt-brake-pedal",
  ],
  ["thudding from the boot with passengers in the back", "noise noise:clunk noise:from-rear noise:loaded"],
  // Shakes
  ["The steering wheel shakes between 55 and 65 mph.", "shake shake:felt-steering-wheel shake:speed-80-110"],
  ["Vibration at 80-100 km/h, felt in the seat.", "shake shake:speed-80-110 shake:felt-seat-floor"],
  [
    "The car shudders under braking from motorway speeds.",
    "shake shake:braking shake:above-110 ?shake:braking-hard",
  ],
  [
    "Brake pedal pulsates when I brake hard.",
    "shake shake:felt-brake-pedal shake:braking-hard ?shake:braking",
  ],
  [
    "I get a wobble through the wheel over 60 mph.",
    "shake shake:felt-steering-wheel shake:speed-80-110 shake:above-110",
  ],
  [
    "It vibrates from about 20 mph upwards.",
    "shake shake:speed-30-60 shake:speed-60-80 shake:speed-80-110 shake:above-110",
  ],
  ["Judder when pulling away in first gear", "shake shake:pulling-away ?shake:gear-change"],
  [
    "shimmy in the steering around 100 kph, smooths out above 120 kph",
    "shake shake:felt-steering-wheel shake:speed-80-110 shake:one-speed-only -shake:above-110",
  ],
  [
    "The whole car shakes at a certain speed, about 110 km/h.",
    "shake shake:felt-whole-car shake:one-speed-only shake:speed-80-110 shake:above-110",
  ],
  ["At idle the car vibrates, and it follows the revs.", "shake shake:at-standstill shake:follows-engine"],
  ["A slow waddle below 30 km/h", "shake shake:below-30"],
  ["trembling steering when accelerating hard", "shake shake:accelerating ?shake:felt-steering-wheel"],
  [
    "My seat buzzes at seventy miles an hour",
    "shake shake:felt-seat-floor shake:speed-80-110 shake:above-110 ?noise ?noise:hum ?noise:felt-seat-floor ?noise:speed-80-110 ?noise:above-110",
  ],
  [
    "The vibration only comes at 50 mph.",
    "shake shake:speed-60-80 shake:speed-80-110 ?shake:one-speed-only ?-shake:constant",
  ],
  [
    "no shake below 40 mph but from 50 up it is awful",
    "shake -shake:below-30 -shake:speed-30-60 ?shake:speed-60-80 shake:speed-80-110 shake:above-110",
  ],
  [
    "Steering wheel judders under heavy braking, worse when warm.",
    "shake shake:felt-steering-wheel shake:braking-hard shake:warm ?shake:braking",
  ],
  // Pull, wander, steering
  ["The car pulls to the left.", "pull pull:pull-left"],
  ["It drifts right all the time.", "pull pull:pull-right pull:constant"],
  ["Pulls hard to the right when braking.", "pull pull:pull-right pull:braking"],
  ["veers left under acceleration", "pull pull:pull-left pull:accelerating"],
  ["It wanders all over the road and follows ruts.", "wander"],
  ["On the motorway it needs constant correction and feels vague.", "wander ?wander:above-110"],
  ["There is a lot of play in the steering.", "steering-play"],
  ["Steering feels loose and sloppy.", "steering-play ?wander"],
  ["The steering is very heavy when cold.", "steering-heavy steering-heavy:cold"],
  ["Steering heavier one way than the other.", "steering-heavy steering-heavy:heavy-one-way"],
  [
    "The steering wheel is off centre since the tracking was done.",
    "steering-off-centre alignment-done-lately",
  ],
  ["The wheel does not return to the centre after a turn.", "steering-poor-return"],
  ["power steering light on and the wheel is hard to turn", "steering-lamp steering-heavy"],
  ["The steering wheel kicks back over bumps.", "kickback ?shake:small-bumps ?small-bumps"],
  // Ride, height, brakes, leaks
  ["It bottoms out over humps with passengers.", "bottoms-out bottoms-out:humps bottoms-out:loaded"],
  ["The back end bounces and never settles, like a boat.", "bouncy ?bouncy:from-rear"],
  ["It leans a lot in corners.", "dives-rolls dives-rolls:cornering"],
  ["nose dives when I brake", "dives-rolls dives-rolls:braking"],
  ["The ride is really hard, you feel every stone.", "harsh-ride"],
  [
    "The car sits low at the rear left.",
    "sits-low sits-low:from-rear sits-low:from-left ?ride-height-low@rear-left",
  ],
  [
    "There's an oil leak at the front right damper.",
    "fluid-leak fluid-leak:from-front fluid-leak:from-right ?damper-oil@front-right",
  ],
  ["One wheel is getting hot and there is a burning smell.", "brake-hot ?wheel-hotter"],
  ["The brake is dragging on the rear right.", "brake-hot brake-hot:from-rear brake-hot:from-right"],
  ["Spongy pedal, takes ages to stop.", "brake-weak"],
  // Tyres
  [
    "The front tyres are worn on the inside edge.",
    "tyre-wear tyre-wear:wear-inner-edge tyre-wear:from-front ?tyre-inner-edge-worn-seen",
  ],
  [
    "Outer edges of both front tires are bald.",
    "tyre-wear tyre-wear:wear-outer-edge tyre-wear:from-front ?tyre-outer-edge-worn-seen ?tyre-wear:wear-both-shoulders",
  ],
  [
    "The rear tyres are cupped and noisy.",
    "tyre-wear tyre-wear:wear-cupped tyre-wear:from-rear noise ?tyre-cupping-felt ?noise:from-rear",
  ],
  [
    "feathered tread on the front left",
    "tyre-wear tyre-wear:wear-feathered tyre-wear:from-front tyre-wear:from-left",
  ],
  ["Only one tyre is wearing.", "tyre-wear tyre-wear:wear-one-tyre"],
  [
    "It keeps eating tyres on both edges.",
    "tyre-wear tyre-wear:wear-both-shoulders ?tyre-both-shoulders-worn-seen",
  ],
  // Negation
  ["No noise when braking.", "-noise:braking"],
  ["It doesn't pull any more.", "-pull"],
  ["no shaking, no vibration, no pull", "-shake -pull"],
  ["The brakes work without any clunk.", "-noise -noise:clunk"],
  ["The vibration is gone.", "-shake"],
  ["It has a flat-sounding hum, but it is not flat.", "noise noise:hum"],
  ["It used to pull but doesn't now.", "-pull"],
  ["No knocking, rattling or creaking.", "-noise -noise:clunk -noise:rattle -noise:creak"],
  ["It clunks over bumps but not when braking.", "noise noise:clunk noise:small-bumps -noise:braking"],
  ["When braking there is no noise at all.", "-noise:braking"],
  ["car pulls left when braking no noise no vibration", "pull pull:pull-left pull:braking -noise -shake"],
  ["The noise goes away when warm.", "noise -noise:warm ?noise:cold"],
  ["There is a hum. At low speed there is nothing.", "noise noise:hum -noise:below-30"],
  ["The hum isn't there in the wet.", "noise noise:hum -noise:wet ?noise:when-dry"],
  ["It doesn’t shake any longer since the wheels were balanced.", "-shake tyres-fitted-lately"],
  ["I have no idea where the knocking comes from.", "noise noise:clunk"],
  ["The garage did not cure the vibration.", "shake"],
  ["New tyres made no difference to the shimmy.", "shake tyres-fitted-lately ?tried-tyres"],
  ["I can't drive over a bump without it clunking.", "noise noise:clunk noise:small-bumps"],
  ["The rattle has not gone away.", "noise noise:rattle"],
  ["Neither a shake nor a pull.", "-shake -pull"],
  ["It never pulls.", "-pull"],
  ["The noise doesn't change in neutral.", "noise ?noise:unchanged-in-neutral"],
  ["The shudder disappeared after the alignment was done.", "-shake alignment-done-lately"],
  [
    "Not a squeak from it in the dry, but it squeals in the wet.",
    "noise noise:squeal noise:wet ?-noise:squeak ?-noise:when-dry",
  ],
  ["The knocking stops when I brake.", "noise noise:clunk noise:brake-changes-it ?-noise:braking"],
  // Only, hedges
  ["It only knocks when turning slowly.", "noise noise:clunk noise:turning-slowly ?-noise:constant"],
  ["Maybe it is a rattle from the rear, I am not sure.", "noise noise:rattle noise:from-rear"],
  ["I think it pulls to the left a bit.", "pull pull:pull-left"],
  ["The clunk seems to come from the right-hand side.", "noise noise:clunk noise:from-right"],
  ["It could be a wheel bearing, it growls in long bends.", "noise noise:growl noise:cornering"],
  ["it might vibrate a little at 100 km/h", "shake shake:speed-80-110"],
  // Contexts
  ["Since I had the tyres done it shakes.", "tyres-fitted-lately shake"],
  ["After hitting a pothole the car pulls to the right.", "pothole-strike pull pull:pull-right"],
  ["I clipped a kerb and now the steering wheel is crooked.", "kerb-strike steering-off-centre"],
  ["New brakes last week, now they squeal.", "brakes-done-lately noise noise:squeal"],
  ["The pads and discs were replaced last month.", "brakes-done-lately"],
  ["New control arms were fitted and it still clunks.", "arms-done-lately noise noise:clunk ?tried-arms"],
  ["It was parked for months and now it rubs.", "long-standing noise noise:scrape"],
  ["I drove through deep snow yesterday and now it shakes.", "snow-mud shake ?shake:came-suddenly"],
  [
    "The clutch was replaced and since then it clunks when I change gear.",
    "engine-work-lately noise noise:clunk noise:gear-change",
  ],
  ["Had a light accident at the front.", "collision"],
  [
    "We towed a caravan over the weekend; now the back sits low.",
    "heavy-load-lately sits-low sits-low:from-rear ?under-car-work-lately ?ride-height-low",
  ],
  ["It was on a ramp for an inspection on Monday.", "under-car-work-lately"],
  [
    "Fitted new shocks all round, knocks over drain covers since.",
    "suspension-done-lately noise noise:clunk noise:small-bumps",
  ],
  ["It knocks whenever I hit a pothole.", "noise noise:clunk noise:one-wheel-bump"],
  ["Do I need new shock absorbers? It bounces.", "bouncy"],
  ["I have not hit any kerbs.", "-kerb-strike"],
  // Two complaints
  [
    "There is a clunk over bumps and a shimmy at 90 km/h.",
    "noise noise:clunk noise:small-bumps shake shake:speed-80-110",
  ],
  [
    "It squeals when braking. At 65 mph the steering wheel shakes.",
    "noise noise:squeal noise:braking shake shake:speed-80-110 shake:felt-steering-wheel",
  ],
  [
    "When braking, the car pulls left, and over humps there is a knock from the rear.",
    "pull pull:pull-left pull:braking noise noise:clunk noise:humps noise:from-rear",
  ],
  ["It hums on the motorway and wanders.", "noise noise:hum noise:above-110 wander ?wander:above-110"],
  [
    "A clunk and a shudder when pulling away",
    "noise noise:clunk noise:pulling-away shake shake:pulling-away",
  ],
  // Words with two meanings
  ["The noise came back right away after they put it back together.", "noise"],
  ["I left it at the garage and they found nothing wrong.", "?looked-over"],
  ["All right, so the noise is back again and I need it fixed right now.", "noise"],
  ["The tyre centre fitted three tyres and did the tracking.", "tyres-fitted-lately alignment-done-lately"],
  [
    "A thump from the front with every turn of the wheels.",
    "noise noise:thump noise:from-front noise:once-per-turn",
  ],
  ["The driver's side rear wheel knocks.", "noise noise:clunk noise:from-rear"],
  ["nearside front wheel bearing hum", "noise noise:hum noise:from-front"],
  ["Passenger side clicks when turning.", "noise noise:click noise:turning-slowly"],
  ["There is tread left on all of them and the pads are fine.", ""],
  ["I pulled over and called my wife.", ""],
  ["My brakes were done two years ago.", ""],
  // Slips, capitals, no marks, US usage
  ["MY CAR SHAKES WHEN I BRAKE AT HIGHWAY SPEEDS", "shake shake:braking shake:above-110 ?shake:braking-hard"],
  ["vibraiton in the stering wheel at 60mph", "shake shake:felt-steering-wheel shake:speed-80-110"],
  ["sqeaking noize over speedbumps", "noise noise:squeak noise:humps"],
  [
    "clonk goin round corners front rigth",
    "noise noise:clunk noise:cornering noise:from-front noise:from-right",
  ],
  [
    "tires wearing on the inside and it hums real loud on the freeway",
    "tyre-wear tyre-wear:wear-inner-edge noise noise:hum noise:above-110 ?tyre-inner-edge-worn-seen",
  ],
  [
    "car makes a popping sound backing out of the driveway with the wheel turned",
    "noise noise:click noise:reversing noise:turning-slowly ?noise:steering-standstill",
  ],
  [
    "steering wheel wobbles 45-50 mph tires were just balanced",
    "shake shake:felt-steering-wheel shake:speed-60-80 shake:speed-80-110 tyres-fitted-lately",
  ],
  ["Doesnt shake doesnt pull just a loud hum from the back", "-shake -pull noise noise:hum noise:from-rear"],
  [
    "theres a knocking when going over bumps its getting worse",
    "noise noise:clunk noise:small-bumps noise:getting-worse",
  ],
  ["grinding noise intermittent, mostly in the morning", "noise noise:grind noise:comes-and-goes noise:cold"],
  // Mechanics' notes
  ["Front left: slight play at 3 and 9.", "play-3-9@front-left"],
  ["Clear play at 12 and 6, rear right.", "play-12-6@rear-right"],
  ["No play at 12 and 6.", "-play-12-6"],
  ["FL bearing rough when spun by hand", "wheel-spin-rough@front-left ?bearing-rough-brake-off@front-left"],
  [
    "Front right wheel rubs when turned by hand.",
    "wheel-spin-rub@front-right ?noise ?noise:scrape ?noise:from-front ?noise:from-right",
  ],
  // Nothing of the kind
  ["Hello, could you tell me your opening hours please?", ""],
  ["Thank you very much, see you on Friday.", ""],
  ["The radio does not work and the seat heater is cold.", ""],
  ["I would like to book my car in for its yearly test.", ""],
  ["The paint on the bonnet is fading.", ""],
  // A second round; before they were worked with, recall was 0.900 and precision 0.905 on them
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
    "tyres-fitted-lately alignment-done-lately shake shake:speed-80-110 ?tried-tyres ?tried-alignment",
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

/** Labels of one sentence, apart. */
export function labelsOf(labels: string): { wanted: Set<string>; allowed: Set<string> } {
  const marks = labels.split(" ").filter((mark) => mark !== "");
  return {
    wanted: new Set(marks.filter((mark) => !mark.startsWith("?"))),
    allowed: new Set(marks.filter((mark) => mark.startsWith("?")).map((mark) => mark.replace(/^\?-?/u, ""))),
  };
}
