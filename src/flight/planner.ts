import { metresPerFoot, metresPerSecondPerKnot } from '../units/factors.ts';
import { lowestKeyHeight, windShareThatWorks } from './beyond-reach.ts';
import { cautionsOf } from './cautions.ts';
import { RequestError } from './errors.ts';
import { flyPattern } from './fly-pattern.ts';
import type { Caution, Plan, PlanRequest, TrackSample, WindAtHeight } from './plan.ts';
import { find180, procedure180, type Request180 } from './power-off-180.ts';
import { type Resolved, resolveRequest } from './request.ts';
import { roundOutPull } from './round-out-pull.ts';
import { positiveAngle, surfaceWindHeight, windAt } from './wind.ts';

/**
 * Plans an approach and flies it: finds the number of its procedure that brings the wheels to the spot, flies the
 * procedure with it through the air and the wind, and reports the flight. A plan that does not reach the spot is
 * reported as flown, with `made` false and the caution `beyond-reach`.
 * Throws RequestError, with the field and its allowed range, for a request that cannot be flown at all.
 */
export function planApproach(request: PlanRequest): Plan {
  if (request.approach !== '180') {
    throw new RequestError('approach', `the approach ${request.approach} is not known: write 180`);
  }
  const resolved = resolveRequest(request);
  const { conditions, flown } = resolved;
  const { runway, aircraft, airfield, power, approach } = request;
  const circuit = request.circuit ?? runway.circuit;
  const pull = roundOutPull(conditions);
  const asked: Request180 = {
    side: circuit === 'right' ? 1 : -1,
    height: flown.height,
    spacing: flown.spacing,
    bank: flown.bank,
    pull,
  };
  const found = find180(asked, conditions, runway.heading);
  const { flight, keys, aimPoint, levelAt } = flyPattern(
    procedure180(asked, found.numbers, conditions),
    conditions,
    runway.heading,
  );
  const track = flight.track.map((sample) => ({ ...sample, heading: positiveAngle(sample.heading) }));
  const last = track.at(-1)!;
  const made = found.miss === 0;
  return {
    aircraft,
    airfield,
    runway,
    air: conditions.air,
    wind: windAsFlown(resolved, runway.heading),
    approach,
    power,
    circuit,
    flown,
    solved: { name: 'past-abeam', value: found.numbers.pastAbeam, unit: 'm' },
    track,
    keys,
    gates: [],
    touchdown: { along: last.along, across: last.across, time: last.time, speed: last.groundspeed },
    roundOut: {
      roundOutDistance: (levelAt ?? last.along) - (aimPoint ?? last.along),
      holdOffDistance: last.along - (levelAt ?? last.along),
      loadFactor: pull,
    },
    cautions: [
      ...cautionsOf({ aircraft, runway, flown, track, keys, pull }),
      ...(made ? [] : unreached(asked, resolved, runway.heading, track)),
    ],
    made,
  };
}

/** Heights, m, at which a plan lists its wind: the surface, and round numbers up to the start. */
const listedHeights = [2, surfaceWindHeight, 30, 60, 100, 150, 200, 300, 450, 600, 900, 1200, 1500];

function windAsFlown({ conditions, flown }: Resolved, runwayHeading: number): WindAtHeight[] {
  return [...listedHeights.filter((height) => height < flown.height), flown.height].map((height) =>
    windAt(conditions.wind, height, runwayHeading),
  );
}

function unreached(
  asked: Request180,
  { conditions, flown }: Resolved,
  heading: number,
  track: readonly TrackSample[],
): Caution[] {
  const last = track.at(-1)!;
  const off = Math.hypot(last.along, last.across);
  const where = `Even with the base turn started abeam the spot, the wheels touch ${Math.ceil(off)} m from it`;
  const height = lowestKeyHeight(asked, conditions, heading);
  const share = windShareThatWorks(asked, conditions, heading);
  const speed = share === undefined ? undefined : share * flown.surfaceWind.speed;
  const ways = [
    ...(height === undefined ? [] : [`a downwind key at ${Math.ceil(height / metresPerFoot / 10) * 10} ft`]),
    ...(speed === undefined || share === 0
      ? []
      : [`a wind of ${Math.floor(speed / metresPerSecondPerKnot)} kt from the same direction`]),
  ];
  const beyond: Caution = {
    code: 'beyond-reach',
    message: `${where}${ways.length > 0 ? `; it would be made with ${ways.join(', or with ')}` : ', and neither more height nor less wind makes it: fly closer, or bank more'}.`,
    value: off,
    limit: 0,
    source: 'flown by this plan',
  };
  return [beyond, ...windOverGlide(resolvedWind(track))];
}

/** The slowest groundspeed on the legs, where the wind holds the aircraft still or carries it back. */
function resolvedWind(track: readonly TrackSample[]): TrackSample | undefined {
  const final = track.filter((sample) => sample.phase === 'final');
  return final.length > 1 && final.at(-1)!.along <= final[0]!.along ? final[0] : undefined;
}

function windOverGlide(stuck: TrackSample | undefined): Caution[] {
  if (!stuck) return [];
  return [
    {
      code: 'wind-over-glide',
      message: 'On final the wind is stronger than the glide: the aircraft makes no way towards the spot.',
      value: stuck.groundspeed,
      limit: 0,
      source: 'flown by this plan',
    },
  ];
}
