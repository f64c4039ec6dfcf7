/** A term of the trade, as the glossary explains it and the index finds it. */
export interface Term {
  readonly term: string;
  /** Other forms in which the text uses it. */
  readonly also?: readonly string[];
  readonly means: string;
}

/** In our own words, for readers who have flown a few hours; in alphabetical order. */
export const terms: readonly Term[] = [
  {
    term: 'aim point',
    also: ['aiming point'],
    means:
      'The place where the path of the final glide, drawn on straight, meets the ground. The wheels touch beyond it, because the round-out and the hold-off carry the aircraft farther.',
  },
  {
    term: 'airspeed',
    also: ['indicated airspeed', 'airspeed indicator'],
    means:
      'Speed through the air. What the instrument shows is the indicated airspeed; stall and glide speeds are given in it.',
  },
  {
    term: 'balloon',
    also: ['balloons', 'ballooning'],
    means:
      'To climb away from the runway in the round-out, because it was begun too late, too hard or too fast.',
  },
  {
    term: 'base key',
    means:
      'The key position on the base leg, wings level. The place at which an approach is judged high, low or right, while it can still be put right.',
  },
  {
    term: 'base leg',
    also: ['on base'],
    means: 'The part of the pattern flown square to the runway, between the base turn and the turn to final.',
  },
  { term: 'base turn', means: 'The turn from the downwind leg onto the base leg.' },
  {
    term: 'best-glide speed',
    also: ['best glide', 'best glide speed', 'glide speed'],
    means:
      'The airspeed at which the aircraft goes farthest through the air for the height it loses. Slower or faster, it goes less far.',
  },
  {
    term: 'bounce',
    also: ['bounces', 'bounced'],
    means:
      'To leave the runway again after the wheels have touched, thrown up by the undercarriage and by a wing that still carries.',
  },
  {
    term: 'centreline',
    means: 'The middle of the runway, and the line on which it lies drawn on over the ground.',
  },
  {
    term: 'circuit',
    also: ['pattern', 'traffic pattern'],
    means:
      'The path flown around a runway: along it downwind, across to it on base, and down it on final. Also called the pattern.',
  },
  {
    term: 'crab',
    also: ['crabs', 'crabbing'],
    means:
      'To fly with the nose laid off into a wind from the side, wings level, so that the track over the ground stays where it is wanted.',
  },
  {
    term: 'crosswind',
    means:
      'The part of the wind that blows square across the runway, or across the way the aircraft is going.',
  },
  {
    term: 'cutting the corner',
    also: ['cut the corner', 'cut corner'],
    means:
      'Turning from base towards the spot at once, without waiting for the centreline, to spend less height.',
  },
  {
    term: 'density altitude',
    means:
      'The height at which the standard atmosphere has the density of the air of the day. The higher it is, the faster the aircraft flies over the ground at the same indicated airspeed.',
  },
  {
    term: 'downwind key',
    means:
      'The key position abeam the spot on the downwind leg. A 180° approach begins here, with the throttle closed.',
  },
  {
    term: 'downwind leg',
    also: ['on downwind'],
    means: 'The part of the pattern flown beside the runway, against the direction of landing.',
  },
  {
    term: 'drift',
    means:
      'The angle between where the nose points and where the aircraft goes over the ground, made by a wind from the side. At the touchdown: movement across the runway.',
  },
  {
    term: 'final',
    also: ['final approach', 'short final'],
    means: 'The last straight part of an approach, on the centreline.',
  },
  {
    term: 'float',
    also: ['floats', 'floating'],
    means:
      'To fly on over the runway in the hold-off, because there was speed to spare when the round-out began.',
  },
  {
    term: 'gate',
    also: ['gates'],
    means:
      'At a key position, the lowest and the highest height from which the spot is still made, by the ways that its table names.',
  },
  {
    term: 'glide ratio',
    means:
      'How far the aircraft goes through still air for the height it loses. Over the ground it is more with the wind behind, and less against it.',
  },
  {
    term: 'go-around',
    also: ['go around', 'going around'],
    means: 'Breaking off an approach with full power, and climbing away to fly another.',
  },
  {
    term: 'ground effect',
    means: 'The drag that a wing is spared within about a span of the ground; it makes a fast landing long.',
  },
  { term: 'gust', also: ['gusts'], means: 'A short rise of the wind above what it is on the average.' },
  {
    term: 'headwind',
    means:
      'The part of the wind that blows against the way the aircraft is going, or against the direction of landing.',
  },
  {
    term: 'hold-off',
    also: ['hold off'],
    means:
      'The last part of a landing: close above the runway, level, letting the speed go until the wheels touch.',
  },
  {
    term: 'key position',
    also: ['key positions'],
    means:
      'A place in the pattern at which height and view are compared with what they should be. It is a guide and not a mark on the ground: the wind moves it.',
  },
  {
    term: 'load factor',
    means:
      "How many times the aircraft's weight the wing carries: one in level flight, more in a turn or a round-out.",
  },
  {
    term: 'overshoot',
    also: ['overshooting'],
    means:
      'To land, or to be about to land, beyond the chosen place. In a turn: to go through the centreline.',
  },
  {
    term: 'power-off approach',
    also: ['power-off approaches'],
    means: 'An approach flown from a key position to the ground with the engine giving no help.',
  },
  {
    term: 'QNH',
    means: 'The altimeter setting with which an altimeter on the ground shows the elevation of the airfield.',
  },
  {
    term: 'reach',
    means: 'The ground on which an aircraft can arrive from where it is, by gliding, in the wind of the day.',
  },
  {
    term: 'round-out',
    also: ['round out', 'rounds out', 'rounding out'],
    means: 'The gentle change from the final glide to level flight just above the runway.',
  },
  {
    term: 'S-turn',
    also: ['S-turns'],
    means: 'A turn away from the line to be flown and back to it, to lose height without coming nearer.',
  },
  { term: 'sink', means: 'The speed at which height is lost.' },
  { term: 'spacing', means: 'The distance over the ground from the centreline to the downwind leg.' },
  {
    term: 'spot',
    means:
      'The place on the runway at which the wheels are meant to touch. Heights and distances are counted from it.',
  },
  {
    term: 'stall',
    also: ['stall speed', 'stalls'],
    means:
      'The state in which the wing, asked for too much, carries less instead of more. The stall speed rises with the load factor.',
  },
  {
    term: 'steep approach',
    means: 'A way of losing height on final as the handbook allows it: by speed, flap, slip or brake.',
  },
  {
    term: 'tailwind',
    means:
      'The part of the wind that blows the way the aircraft is going, or along the direction of landing.',
  },
  {
    term: 'touchdown',
    also: ['touch down', 'touches down'],
    means: 'The moment at which the wheels meet the ground.',
  },
  {
    term: 'turn to final',
    also: ['final turn'],
    means:
      'The turn from base onto the centreline. It should be over, wings level, by the least height that the school sets.',
  },
  {
    term: 'undershoot',
    also: ['undershooting'],
    means: 'To land, or to be about to land, before the chosen place.',
  },
  {
    term: 'wind gradient',
    also: ['wind shear', 'wind by height'],
    means: 'The change of the wind with height: near the ground it is slower than above.',
  },
];
