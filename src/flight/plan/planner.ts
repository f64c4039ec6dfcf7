import { metresPerFoot, metresPerSecondPerKnot } from '../../units/factors.ts';
import { positiveAngle, stillAir, surfaceWindHeight, windAt, windTriangle } from '../air/wind.ts';
import { sinOfGlide } from '../aircraft/glide.ts';
import type { ApproachMethod, ApproachTask, Solution } from '../approaches/approach-method.ts';
import { approaches } from '../approaches/approaches.ts';
import type { Conditions } from '../flying/conditions.ts';
import { endsAtSpot, type FlownPattern, flyPattern } from '../flying/fly-pattern.ts';
import {
  baseLeg,
  baseTrack,
  baseTurn,
  downwindLeg,
  downwindTrack,
  finalLegs,
  finalTurn,
  stillAirLead,
} from '../flying/pattern-legs.ts';
import type { Procedure } from '../flying/procedure.ts';
import { roundOutPull } from '../flying/round-out-pull.ts';
import type { Caution } from '../terms/caution.ts';
import { unlessRefused } from '../terms/errors.ts';
import { gradeOf } from '../terms/grade.ts';
import type { Plan, PlanRequest, Steps, TrackSample, WindAtHeight } from '../terms/plan.ts';
import { heightThatWorks, windShareThatWorks } from './beyond-reach.ts';
import { cautionsOf, graded } from './cautions.ts';
import { soundFinal } from './final-band.ts';
import { gatesOf } from './gates.ts';
import { type Resolved, resolveRequest } from './request.ts';

/**
 * Plans an approach and flies it: finds the number of its procedure that brings the wheels to the spot, flies the
 * procedure with it through the air and the wind, and reports the flight. A plan that does not reach the spot is
 * reported as flown, with `made` false and the caution `beyond-reach`.
 * SI units and radians, in and out.
 * @throws RequestError, with the field and its allowed range, for a request that cannot be flown at all.
 */
export function planApproach(request: PlanRequest): Plan {
  const worked = workOut(request);
  const { resolved, asked } = worked;
  const { conditions, flown } = resolved;
  const { runway, airfield, power, approach, detail = 'whole' } = request;
  const { aircraft } = conditions;
  const { solution, pattern } = flyToSpot(worked, runway.heading);
  const { flight, keys, aimPoint, levelAt } = pattern;
  const track = flight.track.map((sample) => ({ ...sample, heading: positiveAngle(sample.heading) }));
  const last = track.at(-1)!;
  // The search says where the number left open is; only the flight says whether the spot is made.
  const made = solution?.made === true && endsAtSpot(pattern);
  const cautions = [
    ...cautionsOf({ aircraft, runway, flown, track, keys, pull: asked.pull, minimums: request.minimums }),
    ...(made ? [] : unreached(worked, track, request)),
  ];
  return {
    aircraft,
    airfield,
    runway,
    air: conditions.air,
    wind: windAsFlown(resolved, track[0]!.height, runway.heading),
    approach,
    power,
    circuit: asked.side === 1 ? 'right' : 'left',
    flown: { ...flown, height: track[0]!.height },
    solved: solution?.solved ?? { name: 'none', value: 0, unit: 'm' },
    circles: solution?.circles && { flown: solution.circles.flown, allowed: solution.circles.allowed() },
    track,
    keys,
    gates: made && detail === 'whole' ? gatesOf(keys, asked, conditions) : [],
    touchdown: { along: last.along, across: last.across, time: last.time, speed: last.groundspeed },
    roundOut: {
      roundOutDistance: (levelAt ?? last.along) - (aimPoint ?? last.along),
      holdOffDistance: last.along - (levelAt ?? last.along),
      loadFactor: asked.pull,
    },
    cautions,
    grade: gradeOf(cautions),
    made,
  };
}

/**
 * m: a flight that ends farther from the spot than this is corrected; and how far the results of the two kinds of
 * steps may differ.
 */
const closeEnough = 0.02;
const partsAtMost = 5;

/**
 * Flies what a search found. The steps of the flight are shorter: where it ends beside the spot because of that, the
 * search is asked again for as much on the other side.
 */
export function flyToSpot(
  { resolved, asked, method, solution }: WorkedOut,
  runwayHeading: number,
): { readonly solution: Solution | undefined; readonly pattern: FlownPattern } {
  const { conditions } = resolved;
  const fly = (found: Solution | undefined) =>
    flyPattern(found?.closed.procedure ?? atOnce(asked, resolved), conditions, runwayHeading);
  const first = { solution, pattern: fly(solution) };
  let best = first;
  let touchdown = 0;
  for (let tries = 0; tries < 3 && best.solution?.made; tries++) {
    const { along, phase } = best.pattern.flight.track.at(-1)!;
    if (phase !== 'hold-off' || Math.abs(along) < closeEnough || Math.abs(along) > partsAtMost) break;
    touchdown -= along;
    const again = method.solve({ ...asked, touchdown }, conditions);
    if (!again?.made) return first;
    best = { solution: again, pattern: fly(again) };
  }
  return best;
}

/** A request resolved, and what its approach found. */
export interface WorkedOut {
  readonly resolved: Resolved;
  readonly asked: ApproachTask;
  readonly method: ApproachMethod;
  readonly solution: Solution | undefined;
}

/** Resolves a request and finds the number of its procedure, without flying it for the page. Throws RequestError. */
export function workOut(request: PlanRequest): WorkedOut {
  const resolved = resolveRequest(request);
  const method = approaches[request.approach];
  const { flown, conditions } = resolved;
  const asked: ApproachTask = {
    side: (request.circuit ?? request.runway.circuit) === 'right' ? 1 : -1,
    height: flown.height,
    heightGiven: request.height !== undefined,
    keyHeight: flown.keyHeight,
    spacing: flown.spacing,
    bank: flown.bank,
    bankGiven: request.bank !== undefined,
    options: request.options ?? {},
    pull: roundOutPull(conditions),
    leastFinal: Math.max(soundFinal, request.minimums?.finalTurn ?? 0),
  };
  return { resolved, asked, method, solution: method.solve(asked, conditions) };
}

/**
 * A flight that shows what happens in an approach that cannot be flown: the turns are begun at once, where they would
 * begin in still air.
 */
function atOnce(asked: ApproachTask, { conditions }: Resolved): Procedure {
  const { side, bank, spacing, height, pull } = asked;
  const lead = Math.min(stillAirLead(conditions, bank), spacing / 2);
  return {
    start: { along: 0, across: side * spacing, height, eas: conditions.polar.speed },
    legs: [
      downwindLeg(side, 0, conditions),
      baseTurn(side, bank),
      baseLeg(side, lead, conditions),
      finalTurn(side, bank),
      ...finalLegs(conditions, pull),
    ],
  };
}

/** Heights, m, at which a plan lists its wind: the surface, and round numbers up to the start. */
const listedHeights = [2, surfaceWindHeight, 30, 60, 100, 150, 200, 300, 450, 600, 900, 1200, 1500];

function windAsFlown({ conditions }: Resolved, start: number, runwayHeading: number): WindAtHeight[] {
  return [...listedHeights.filter((height) => height < start), start].map((height) =>
    windAt(conditions.wind, height, runwayHeading),
  );
}

function unreached(
  { method, asked, resolved: { conditions, flown } }: WorkedOut,
  track: readonly TrackSample[],
  request: PlanRequest,
): Caution[] {
  const last = track.at(-1)!;
  const off = Math.hypot(last.along, last.across);
  const steps = request.steps ?? usualSteps;
  const search = (request.detail ?? 'whole') === 'whole';
  const works = search ? heightThatWorks(method, asked, conditions) : undefined;
  const height = works === undefined ? undefined : startHeight(works, asked.height, steps.height);
  const share = search ? windShareThatWorks(method, asked, conditions) : undefined;
  const weaker = share === undefined ? 0 : wholeSteps(share * flown.surfaceWind.speed, steps.speed);
  const wind = { ...request.wind, speed: weaker };
  return [
    graded({
      code: 'beyond-reach',
      value: off,
      limit: 0,
      source: 'flown',
      remedy: {
        height: height !== undefined && isFlyable({ ...request, height }) ? height : undefined,
        wind:
          weaker > 0 && flown.windProfile !== 'layers' && isFlyable({ ...request, wind })
            ? weaker
            : undefined,
      },
    }),
    ...windOverGlide(track, asked, conditions),
  ];
}

/** m and m/s: what is suggested is a whole number of these, unless the request asks for others. */
const usualSteps: Steps = { height: 10 * metresPerFoot, speed: metresPerSecondPerKnot };

/** m: a whole number of steps, on the side that works. */
function startHeight(height: number, asked: number, step: number): number {
  const steps = height / step;
  return (height > asked ? Math.ceil(steps) : Math.floor(steps)) * step;
}

/** What is suggested must not itself be a flight that is not to be flown. */
function isFlyable(request: PlanRequest): boolean {
  const plan = unlessRefused(() => planApproach({ ...request, detail: 'flight' }));
  return plan !== undefined && plan.grade !== 'not-to-be-flown';
}

const wholeSteps = (speed: number, step: number) => Math.floor(speed / step) * step;

/** Legs that cannot be flown in the wind: the track cannot be held, or the aircraft makes no way along it. */
function windOverGlide(
  track: readonly TrackSample[],
  asked: ApproachTask,
  conditions: Conditions,
): Caution[] {
  const { side, keyHeight } = asked;
  const final = track.filter((sample) => sample.phase === 'final');
  const backward = final.length > 1 && final.at(-1)!.along <= final[0]!.along;
  const legs = [
    { leg: 'downwind' as const, groundspeed: groundspeedOn(downwindTrack(side), keyHeight, conditions) },
    { leg: 'base' as const, groundspeed: groundspeedOn(baseTrack(side), keyHeight, conditions) },
    { leg: 'final' as const, groundspeed: backward ? 0 : groundspeedOn(0, surfaceWindHeight, conditions) },
  ];
  return legs
    .filter(({ groundspeed }) => groundspeed <= 0)
    .map(({ leg, groundspeed }) =>
      graded({
        code: 'wind-over-glide',
        leg,
        value: groundspeed,
        limit: 0,
        source: 'flown',
      }),
    );
}

/** m/s along a track at the best-glide speed at a height; 0 where the track cannot be held. */
function groundspeedOn(track: number, height: number, conditions: Conditions): number {
  const wind = stillAir();
  conditions.wind(height, wind);
  const { polar } = conditions;
  const sin = sinOfGlide(polar, polar.speed, 1);
  const { groundspeed, holds } = windTriangle(
    track,
    polar.speed * conditions.tasOverEas(height) * Math.sqrt(1 - sin * sin),
    wind,
  );
  return holds ? Math.max(0, groundspeed) : 0;
}
