import type { KeyPosition, Plan } from '../../flight/terms/plan.ts';
import { formatDistance, formatHeight, formatTime, formatWind } from '../../words/figures/format.ts';
import { capital } from '../../words/figures/letter-case.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { formatKeyHeight } from '../../words/keys/key-height.ts';
import { keyNames } from '../../words/keys/key-names.ts';

/** `wind 210° 12 kt, from 1,000 ft, engine idling`. */
export function settingWords({ flown, power }: Pick<Plan, 'flown' | 'power'>, units: PageUnits): string {
  const { from, speed } = flown.surfaceWind;
  const engine = power === 'idle' ? 'engine idling' : 'engine stopped';
  return `wind ${formatWind(from, speed, units)}, from ${formatHeight(flown.height, units)}, ${engine}`;
}

/** What the setting changes at the keys, one sentence each; the printed figure is given beside every figure. */
export function changeWords(plan: Plan, printed: Plan, units: PageUnits): string {
  const changes = plan.keys.flatMap((key) => {
    const before = printed.keys.find(({ id }) => id === key.id);
    if (!before || key.id === 'aim-point' || key.id === 'touchdown') return [];
    return keyChange([key, plan], [before, printed], units);
  });
  const time = formatTime(plan.touchdown.time);
  const timeBefore = formatTime(printed.touchdown.time);
  if (time !== timeBefore) changes.push(`touchdown after ${time} (printed ${timeBefore})`);
  return changes.length === 0
    ? 'No key position changes by as much as is printed.'
    : `${capital(changes.join('; '))}.`;
}

type KeyOfPlan = readonly [KeyPosition, Pick<Plan, 'cautions'>];

function keyChange(key: KeyOfPlan, before: KeyOfPlan, units: PageUnits): string[] {
  const words = ([of, { cautions }]: KeyOfPlan) =>
    of.id === 'base-turn' ? abeamWords(of, units) : formatKeyHeight(of, cautions, units);
  const [now, then] = [words(key), words(before)];
  return now === then ? [] : [`${keyNames[key[0].id].toLowerCase()} ${now} (printed ${then})`];
}

/** Where the base turn begins, along the downwind leg. */
function abeamWords({ along }: KeyPosition, units: PageUnits): string {
  const far = formatDistance(Math.abs(along), units);
  if (far === formatDistance(0, units)) return 'abeam the spot';
  return `${far} ${along < 0 ? 'past' : 'before'} abeam`;
}
