import type { GroundPoint } from '../flight/flying/reach.ts';
import type { PlanGrade } from '../flight/terms/caution.ts';
import type { KeyPosition, Plan } from '../flight/terms/plan.ts';
import type { AirfieldFile } from '../school/airfield.ts';
import { gradedSentence, gradeNames } from '../words/cautions/grade-words.ts';
import { aviation } from '../words/figures/aviation.ts';
import { keyNames } from '../words/keys/key-names.ts';
import { type EarthPoint, placer, UnplaceableError } from './on-earth.ts';

/** A point in the air; `altitude` in m above mean sea level. */
export interface AirPoint extends EarthPoint {
  readonly altitude: number;
}

/** A flight on the Earth, as every file format writes it. */
export interface PlacedFlight {
  readonly name: string;
  /** Begins with the caution. */
  readonly description: string;
  readonly grade: PlanGrade;
  readonly keys: readonly (AirPoint & { readonly name: string; readonly heightAboveSpot: number })[];
  readonly track: readonly AirPoint[];
  /**
   * The ground that the glide reaches from the key of `startOfReach`: a closed ring, counterclockwise, at the field's
   * elevation.
   */
  readonly reach: readonly EarthPoint[];
  readonly reachName: string;
  readonly elevation: number;
}

/** Comes first in the name and the description of every file; after it, a limit that is passed. */
const caution = 'Training material, not for navigation';

/**
 * Puts a flight and the reach (spot frame, m) where the airfield's file says it is. The position in the file is taken
 * for the middle of the runway (ICAO Annex 14, 2.2: the reference point lies near the centre of the aerodrome; from
 * memory). Throws `UnplaceableError` for an airfield without a position.
 */
export function placeFlight(plan: Plan, airfield: AirfieldFile, reach: readonly GroundPoint[]): PlacedFlight {
  const { position, elevation } = airfield;
  if (!position) {
    throw new UnplaceableError(
      'the airfield has no position; add a line such as `position: { latitude: 51.2 deg N, longitude: 1.5 deg W }`',
    );
  }
  const { runway, aircraft } = plan;
  const place = placer({ ...position, elevation, heading: runway.heading });
  const spotFromMiddle = runway.spot - runway.length / 2;
  const onGround = ({ along, across }: GroundPoint) => place({ along: along + spotFromMiddle, across });
  const inAir = (point: GroundPoint & { readonly height: number }): AirPoint => ({
    ...onGround(point),
    altitude: elevation + point.height,
  });
  const subject = `${aircraft.name}, ${airfield.name} ${runway.name}`;
  // A map may show the name alone.
  const isPast = plan.grade !== 'sound' && plan.grade !== 'worth-knowing';
  return {
    name: `${caution}${isPast ? `, ${gradeNames[plan.grade]}` : ''}: ${subject}`,
    description: [
      `${caution}.`,
      `Computed for one aircraft, one wind and one air (${subject}); the aircraft's own handbook, local rules and the instructor's judgement prevail.`,
      "The airfield's position is taken for the middle of the runway.",
      `Aircraft: ${aircraft.source}`,
      `Airfield: ${airfield.source}`,
      ...plan.cautions.map((caution) => gradedSentence(caution, plan, aviation)),
    ].join(' '),
    grade: plan.grade,
    keys: plan.keys.map((key) => ({ ...inAir(key), name: keyNames[key.id], heightAboveSpot: key.height })),
    track: plan.track.map(inAir),
    reach: counterclockwise(reach).map(onGround),
    reachName: `Reach from ${keyNames[startOfReach(plan).id]}`,
    elevation,
  };
}

/** The key position that the reach starts from: the downwind key, or the first key of an approach that has none. */
export function startOfReach({ keys }: Plan): KeyPosition {
  return keys.find(({ id }) => id === 'downwind-key') ?? keys[0]!;
}

/** The ring as seen from above, in the order that RFC 7946 (3.1.6) and KML ask for in an outer ring. */
function counterclockwise(ring: readonly GroundPoint[]): readonly GroundPoint[] {
  let doubleArea = 0;
  for (const [index, { along, across }] of ring.entries()) {
    const next = ring[(index + 1) % ring.length]!;
    doubleArea += across * next.along - next.across * along;
  }
  return doubleArea < 0 ? [...ring].reverse() : ring;
}
