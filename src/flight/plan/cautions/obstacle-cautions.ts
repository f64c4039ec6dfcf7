import { metresPerFoot } from '../../../units/factors.ts';
import { numberText, roundUpTo } from '../../../units/rounding.ts';
import { closestPass, type Pass, type Required, riseToClear, type Swept } from '../../flying/clearance.ts';
import type { Obstacle } from '../../terms/airfield.ts';
import type { KeyPosition } from '../../terms/plan.ts';
import { type Examined, type Found, leastOf, stricter, told } from './examined.ts';

/** m. The least distance from an obstacle, in space; a school may ask for more where the wings are over it. */
const leastClearance = 50 * metresPerFoot;

const sidewaysSource =
  'sideways the 50 ft that are kept above; in the round-out and the hold-off a wing span from the wing, 50 ft at most: a judgement of ours, no source';

/** An obstacle that the path meets, or passes too near. */
export function obstacleCautions({ runway, aircraft: { wing }, track, keys, minimums }: Examined): Found[] {
  const over = stricter(
    leastClearance,
    'screen height of 50 ft: 14 CFR 25.125; aircraft handbooks use the same',
    minimums?.obstacleClearance,
  );
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
        message: passWords(pass, obstacle),
        value: distance,
        limit,
        source: how !== 'beside' && limit === over.limit ? over.source : sidewaysSource,
        at: key?.id,
        remedy:
          rise === undefined
            ? undefined
            : onFinal && Math.abs(at.across) < 1
              ? fartherWords(rise * (onFinal.groundspeed / onFinal.sink), obstacle)
              : riseWords(rise, obstacle, inTheAir),
      },
    ];
  });
}

function passWords({ how, distance, limit }: Pass, { what }: Obstacle): string {
  if (how === 'met') return `The path meets the ${what}, ${feetUp(-distance, 1)} below the top.`;
  const said = told(distance, limit, 'ft', 'least', { value: 'margin' });
  const nearest =
    how === 'above'
      ? `The path passes ${said.value} above the ${what}`
      : `The wing comes within ${said.value} of the ${what}, beside or before it`;
  return `${nearest}; ${said.limit} is the least.`;
}

/** Of an obstacle under final: the whole path moved along. */
function fartherWords(metres: number, { what }: Obstacle): string {
  return `With the spot ${roundUpTo(metres, 10)} m farther in, the path would clear the ${what}.`;
}

/** To 10 ft, on the side that clears. */
function riseWords(rise: number, { what }: Obstacle, key: KeyPosition | undefined): string {
  const there = key ? `, ${feetUp(key.height + rise, 10)} at the ${nameOf(key)}` : '';
  return `A path ${feetUp(rise, 10)} higher would clear the ${what}${there}.`;
}

function nearestTo(at: Pass['at'], keys: readonly KeyPosition[]): KeyPosition | undefined {
  return leastOf(keys, (key) =>
    Math.hypot(key.along - at.along, key.across - at.across, key.height - at.height),
  );
}

const nameOf = ({ label }: KeyPosition) => label.charAt(0).toLowerCase() + label.slice(1);

const feetUp = (metres: number, step: number) =>
  `${numberText(roundUpTo(metres / metresPerFoot, step), step)} ft`;
