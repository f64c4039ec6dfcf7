import type { CautionOf } from '../../src/flight/terms/caution.ts';
import type { Plan, PlanRequest } from '../../src/flight/terms/plan.ts';
import { type Asked, clearanceOf, type PathPoint } from './clearance.ts';
import { type Contradiction, foot, metres } from './contradiction.ts';

/** m: what sampling leaves open. */
const tolerance = 0.6;
/** m: the distance kept from obstacles, unless a school keeps more over them. */
const usual = 50 * foot;

const landingPhases: ReadonlySet<string> = new Set(['round-out', 'hold-off']);

/**
 * Obstacles that the path comes nearer to than the cautions say, and cautions about obstacles that it does not come
 * near.
 */
export function obstacleContradictions(request: PlanRequest, plan: Plan): Contradiction[] {
  const path = asReported(plan);
  const { wing } = plan.aircraft;
  const asked: Asked = {
    over: Math.max(usual, request.minimums?.obstacleClearance ?? 0),
    near: usual,
    nearInLanding: Math.min(wing.span, usual),
  };
  return request.runway.obstacles.flatMap((obstacle): Contradiction[] => {
    const { distance, asked: limit } = clearanceOf(path, wing, obstacle, asked);
    const caution = plan.cautions.find(
      (each): each is CautionOf<'obstacle-clearance'> =>
        each.code === 'obstacle-clearance' && each.obstacle === obstacle.what,
    );
    const only = { ...request, runway: { ...request.runway, obstacles: [obstacle] } };
    const contradiction = (says: string, by: number): Contradiction[] => [
      { kind: 'obstacle', says: `${obstacle.what}: ${says}`, metres: by, request: only },
    ];
    const found = `${metres(distance)} from it at least, of ${metres(limit)}`;
    if (!caution) {
      return distance < limit - tolerance ? contradiction(`no caution, but ${found}`, limit - distance) : [];
    }
    if (distance === 0 && !(caution.value <= 0 && caution.grade === 'not-to-be-flown')) {
      return contradiction(
        `met, but the caution says ${metres(caution.value)}, ${caution.grade}`,
        caution.value,
      );
    }
    const nearer = caution.value / caution.limit - distance / limit;
    if (nearer * limit > tolerance) {
      return contradiction(`${found}; the caution says ${metres(caution.value)}`, nearer * limit);
    }
    return [];
  });
}

/** The samples of a track, with enough more between each two to leave a fifth of a metre. */
function asReported({ track, runway }: Plan): PathPoint[] {
  return track.slice(1).flatMap((b, i) => {
    const a = track[i]!;
    const parts = 1 + Math.ceil(Math.hypot(b.along - a.along, b.across - a.across) / 0.4);
    const turned = ((b.heading - a.heading + 3 * Math.PI) % (2 * Math.PI)) - Math.PI;
    return Array.from({ length: parts }, (_, part) => {
      const share = part / parts;
      const mix = (from: number, to: number) => from + share * (to - from);
      return {
        along: mix(a.along, b.along),
        across: mix(a.across, b.across),
        height: mix(a.height, b.height),
        heading: a.heading + share * turned - runway.heading,
        bank: mix(a.bank, b.bank),
        landing: landingPhases.has(b.phase),
      };
    });
  });
}
