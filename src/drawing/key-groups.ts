import type { KeyPosition, Plan } from '../flight/plan.ts';
import { formatHeight } from '../units/format.ts';
import type { PageUnits } from '../units/page-units.ts';
import { distance, type Point } from './geometry.ts';
import { keyLines } from './pattern-words.ts';
import type { TextLine } from './text.ts';

/** A key position with its place on the page. */
export interface PlacedKey {
  readonly key: KeyPosition;
  readonly at: Point;
}

/** Key positions that one label names. */
export interface KeyGroup extends PlacedKey {
  readonly lines: readonly TextLine[];
}

/** mm: marks closer than this, with the same height in figures, are one mark to the eye. */
const together = 0.8;

/** The keys in the order flown; those that fall together (a base turn that starts at the downwind key) share a label. */
export function groupKeys(plan: Plan, placed: readonly PlacedKey[], units: PageUnits): KeyGroup[] {
  const groups: KeyGroup[] = [];
  for (const { key, at } of placed) {
    const same = groups.findIndex(
      (group) =>
        distance(group.at, at) < together &&
        formatHeight(group.key.height, units) === formatHeight(key.height, units) &&
        isPlain(group.key) &&
        isPlain(key),
    );
    if (same === -1) groups.push({ key, at, lines: keyLines(plan, key, units) });
    else groups[same] = joined(groups[same]!, key);
  }
  return groups;
}

/** Aim point and touchdown have words of their own. */
function isPlain({ id }: KeyPosition): boolean {
  return id !== 'aim-point' && id !== 'touchdown';
}

function joined(group: KeyGroup, { label }: KeyPosition): KeyGroup {
  const names = group.lines.slice(0, -1);
  const last = names.at(-1)!;
  const added = { text: `${label.charAt(0).toLowerCase()}${label.slice(1)}` };
  const lines = [...names.slice(0, -1), { ...last, text: `${last.text},` }, added, group.lines.at(-1)!];
  return { ...group, lines };
}
