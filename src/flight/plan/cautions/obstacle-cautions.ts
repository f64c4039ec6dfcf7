import { metresPerFoot } from '../../../units/factors.ts';
import { closestPass, type Pass, type Required, riseToClear, type Swept } from '../../flying/clearance.ts';
import type { Found } from '../../terms/caution.ts';
import type { KeyPosition } from '../../terms/plan.ts';
import { type Examined, leastOf, stricter } from './examined.ts';

/** m. The least distance from an obstacle, in space; a school may ask for more where the wings are over it. */
const leastClearance = 50 * metresPerFoot;

/** An obstacle that the path meets, or passes too closely. */
export function obstacleCautions({ runway, aircraft: { wing }, track, keys, minimums }: Examined): Found[] {
  const over = stricter(leastClearance, 'screen-height', minimums?.obstacleClearance);
  const required: Required = {
    over: over.limit,
    near: leastClearance,
    nearInLanding: Math.min(wing.span, leastClearance),
  };
  const swept: Swept = { wing, track, runwayHeading: runway.heading };
  return runway.obstacles.flatMap((obstacle): Found[] => {
    const pass = closestPass(obstacle, swept, required);
    if (!pass) return [];
    const { how, distance, limit, at } = pass;
    const key = nearestTo(at, keys);
    const rise = how === 'met' ? riseToClear(obstacle, swept, required) : undefined;
    const inTheAir = nearestTo(
      at,
      keys.filter(({ height }) => height > 1),
    );
    const onFinal = track.find(({ phase, along }) => phase === 'final' && along >= at.along);
    return [
      {
        code: 'obstacle-clearance',
        obstacle: obstacle.what,
        how,
        value: distance,
        limit,
        source: how !== 'beside' && limit === over.limit ? over.source : 'sideways-clearance',
        at: key?.id,
        remedy:
          rise === undefined
            ? undefined
            : onFinal && Math.abs(at.across) < 1
              ? { spot: 'farther-in', by: rise * (onFinal.groundspeed / onFinal.sink) }
              : { higher: rise, near: inTheAir && { key: inTheAir.id, height: inTheAir.height + rise } },
      },
    ];
  });
}

function nearestTo(at: Pass['at'], keys: readonly KeyPosition[]): KeyPosition | undefined {
  return leastOf(keys, (key) =>
    Math.hypot(key.along - at.along, key.across - at.across, key.height - at.height),
  );
}
