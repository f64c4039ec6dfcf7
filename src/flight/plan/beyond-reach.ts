import type { WindField } from '../air/wind.ts';
import type { ApproachMethod, ApproachTask, Solution } from '../approaches/approach-method.ts';
import type { Conditions } from '../flying/conditions.ts';
import { endsAtSpot, flyPattern } from '../flying/fly-pattern.ts';

/** m: no start is looked for above this, and no two starts nearer to each other than this. */
const highestStart = 3000;
const heightStep = 3;

/**
 * The start height, m, nearest to the one asked for from which the spot is made with a sound turn to final: above it for an approach that falls
 * short, below it for one that overshoots; to 3 m, on the side that works. Undefined where there is none.
 */
export function heightThatWorks(
  method: ApproachMethod,
  asked: ApproachTask,
  conditions: Conditions,
): number | undefined {
  const made = (height: number) => {
    const keyHeight = asked.keyHeight === asked.height ? height : asked.keyHeight;
    return isFlown(
      method.solve({ ...asked, height, keyHeight, heightGiven: true }, conditions),
      asked,
      conditions,
    );
  };
  for (const direction of [1, -1]) {
    for (let step = 30; step < highestStart; step *= 2) {
      const height = asked.height + direction * step;
      if (height < heightStep || height > highestStart) break;
      const before = step === 30 ? asked.height : height - (direction * step) / 2;
      if (made(height)) return between(made, height, before, heightStep);
    }
  }
  return undefined;
}

/**
 * The share of this wind, 0 to 1, in which the spot can still be made from this height with a sound turn to final: to
 * a hundredth, on the safe side. Undefined where it cannot be made even in still air.
 */
export function windShareThatWorks(
  method: ApproachMethod,
  asked: ApproachTask,
  conditions: Conditions,
): number | undefined {
  const made = (share: number) => {
    const weaker = { ...conditions, wind: scaled(conditions.wind, share) };
    return isFlown(method.solve(asked, weaker), asked, weaker);
  };
  return made(0) ? between(made, 0, 1, 0.01) : undefined;
}

/** True where a solution comes on to final no lower than it should and, flown, ends at the spot. */
function isFlown(
  solution: Solution | undefined,
  { leastFinal }: ApproachTask,
  conditions: Conditions,
): boolean {
  return (
    solution?.made === true &&
    solution.closed.finalHeight >= leastFinal &&
    endsAtSpot(flyPattern(solution.closed.procedure, conditions, 0))
  );
}

/** Halves the way between what works and what does not, until they are `step` apart. */
function between(made: (x: number) => boolean, works: number, fails: number, step: number): number {
  let good = works;
  let bad = fails;
  while (Math.abs(good - bad) > step) {
    const middle = (good + bad) / 2;
    if (made(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

function scaled(wind: WindField, share: number): WindField {
  return (height, out) => {
    wind(height, out);
    out.along *= share;
    out.across *= share;
    out.alongShear *= share;
    out.acrossShear *= share;
  };
}
