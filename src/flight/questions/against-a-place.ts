import type { Examined } from '../plan/cautions/examined.ts';
import { groundCautions } from '../plan/cautions/ground-cautions.ts';
import { obstacleCautions } from '../plan/cautions/obstacle-cautions.ts';
import { windCautions } from '../plan/cautions/wind-cautions.ts';
import { graded } from '../plan/cautions.ts';
import type { Grade } from '../terms/caution.ts';

/** Why a place is no place to land. A grade says whether it is more than a limit of good practice. */
export type Rejection =
  | {
      /** Neither a pattern's key is reached at its gate, nor a final that could be flown straight in. */
      readonly why: 'out-of-reach' /** m of height lacking, by the way that lacks least. */;
      readonly short: number;
    }
  | {
      /** By its name. */
      readonly why: 'obstacle';
      readonly what: string;
      /** m from it in space, the least on the way; 0 or less where the way meets it, that far below its top. */
      readonly clearance: number;
      /** m: what is required there. */
      readonly limit: number;
      readonly grade: Grade;
    }
  | {
      readonly why: 'too-short' /** m lacking after the landing roll, and the roll, in this wind and air. */;
      readonly short: number;
      readonly roll: number;
    }
  | {
      readonly why: 'tailwind' | 'crosswind' | 'wind' /** m/s, gusts counted. */;
      readonly value: number;
      readonly limit: number;
      readonly grade: Grade;
    };

const windReasons = {
  'wind-over-limit': 'wind',
  'crosswind-over-limit': 'crosswind',
  tailwind: 'tailwind',
} as const;

const isOfTheWind = (code: string): code is keyof typeof windReasons => code in windReasons;

/** What speaks against a landing direction in the wind. */
export function windRejections(examined: Omit<Examined, 'track' | 'keys'>): Rejection[] {
  return windCautions({ ...examined, track: [], keys: [] })
    .map(graded)
    .flatMap(({ code, value, limit, grade }): Rejection[] =>
      isOfTheWind(code) ? [{ why: windReasons[code], value, limit, grade }] : [],
    );
}

/** What stands in the way of a flight to a place, and what the place lacks to stop in. */
export function groundRejections(examined: Examined): Rejection[] {
  const { runway } = examined;
  const obstacles = runway.obstacles.flatMap((obstacle) =>
    obstacleCautions({ ...examined, runway: { ...runway, obstacles: [obstacle] } })
      .map(graded)
      .map(({ value, limit, grade }): Rejection => {
        return { why: 'obstacle', what: obstacle.what, clearance: value, limit, grade };
      }),
  );
  const lacking = groundCautions(examined).filter(({ code }) => code === 'landing-distance');
  return [
    ...obstacles,
    ...lacking.map(
      ({ value, limit }): Rejection => ({ why: 'too-short', short: value - limit, roll: value }),
    ),
  ];
}

/** True where a way goes through something that stands there. */
export function meetsObstacle(rejections: readonly Rejection[]): boolean {
  return rejections.some(({ why, ...reason }) => why === 'obstacle' && isGrave(reason));
}

const isGrave = (reason: object) => 'grade' in reason && reason.grade === 'not-to-be-flown';

/** The gravest last. */
const classes = { practice: 1, cannotBeLandedOn: 2, outOfReach: 3 } as const;

/**
 * How grave a reason is: its class, and within it how much is lacking. For height out of reach that is in m; for the
 * others, which are of different kinds, it is a share: of the clearance required (more than 1 where the obstacle is
 * met), of the roll, of the wind that is too much.
 */
function gravity(reason: Rejection): readonly [of: number, lacking: number] {
  switch (reason.why) {
    case 'out-of-reach':
      return [classes.outOfReach, reason.short];
    case 'too-short':
      return [classes.cannotBeLandedOn, reason.short / reason.roll];
    case 'obstacle':
      return [classOf(reason), (reason.limit - reason.clearance) / reason.limit];
    default:
      return [classOf(reason), (reason.value - reason.limit) / reason.value];
  }
}

const classOf = (reason: object) => (isGrave(reason) ? classes.cannotBeLandedOn : classes.practice);

/** Compares two reasons: the graver first. */
export function graverFirst(a: Rejection, b: Rejection): number {
  const [[classA, lackingA], [classB, lackingB]] = [gravity(a), gravity(b)];
  return classB - classA || (lackingA === lackingB ? 0 : lackingB - lackingA);
}

/**
 * Compares two places by the reasons against them, each list the gravest first: the place with less against it first. The gravest
 * reason decides, then the next; how many there are decides only where all that both have are alike.
 */
export function lessAgainstFirst(a: readonly Rejection[], b: readonly Rejection[]): number {
  for (const [i, reason] of a.entries()) {
    const other = b[i];
    if (!other) return 1;
    const order = graverFirst(other, reason);
    if (order !== 0) return order;
  }
  return a.length - b.length;
}
