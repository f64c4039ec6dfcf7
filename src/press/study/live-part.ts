import { element } from './page-nodes.ts';
import type { StudyUse } from './study-data.ts';

/**
 * What is in the page in place of an element that was printed: the element itself, or what was made for another
 * setting.
 */
interface Slot {
  readonly printed: Element;
  current: Element[];
}

/** A part of the page that can be made again, and put back as it was printed: the same nodes. */
export class LivePart {
  private readonly slots: readonly Slot[];
  private readonly roomLabels: readonly (string | null)[];
  private readonly repeats: boolean;

  /** `repeats`: the elements are copies of one another, each to be replaced by the same. */
  constructor(printed: readonly Element[], repeats = false) {
    this.repeats = repeats;
    this.slots = printed.map((each) => ({ printed: each, current: [each] }));
    this.roomLabels = printed.map((each) => roomOf(each)?.getAttribute('aria-label') ?? null);
  }

  get isDrawing(): boolean {
    return this.slots.some(({ printed }) => printed.matches('figure'));
  }

  /** Where it is now. */
  get place(): Element | undefined {
    return this.slots[0]?.current[0];
  }

  /** px from the edge of the window; 0 for what is in sight. */
  get distance(): number {
    const box = this.place?.getBoundingClientRect();
    if (!box) return Number.POSITIVE_INFINITY;
    return Math.max(0, -box.bottom, box.top - window.innerHeight);
  }

  show(made: readonly Element[]): void {
    const numbers = this.slots.flatMap(({ printed }) => [...printed.querySelectorAll('.caption-number')]);
    for (const [i, slot] of this.slots.entries()) {
      const last = i === this.slots.length - 1;
      const own = this.repeats
        ? made.map((each) => each.cloneNode(true) as Element)
        : made.slice(i, last ? undefined : i + 1);
      // A place that holds nothing now must still be found again.
      const next = own.length > 0 ? own : [element('span', 'study-nothing')];
      for (const each of next) {
        for (const number of each.querySelectorAll('.caption-number:empty')) {
          number.textContent = numbers.shift()?.textContent ?? 'On this page only:';
        }
      }
      replace(slot, next);
      const room = roomOf(next[0]!);
      const label = next[0]!.querySelector('caption')?.textContent;
      if (room && label) room.setAttribute('aria-label', label);
    }
  }

  restore(): void {
    for (const [i, slot] of this.slots.entries()) {
      replace(slot, [slot.printed]);
      const label = this.roomLabels[i];
      const room = roomOf(slot.printed);
      if (room && label != null) room.setAttribute('aria-label', label);
    }
  }

  /** Marks what is there as belonging to the setting before, until it is made again. */
  wait(): void {
    for (const { current } of this.slots)
      for (const each of current) each.setAttribute('data-study', 'waiting');
  }
}

function replace(slot: Slot, next: readonly Element[]): void {
  const [first, ...others] = slot.current;
  if (first === undefined) return;
  for (const other of others) other.remove();
  if (next[0] !== first || next.length > 1) first.replaceWith(...next);
  if (next[0] === slot.printed) slot.printed.removeAttribute('data-study');
  slot.current = [...next];
}

function roomOf(each: Element): Element | null {
  return each.matches('table') ? each.closest('.table-room') : null;
}

/** The uses of directives in the page. What stays as printed keeps all of its figures. */
export function partOf({ n, form }: StudyUse): LivePart | undefined {
  const found = [...document.querySelectorAll(`[data-live="${n}"]`)].filter(
    (each) => !each.closest('[data-printed]'),
  );
  return found.length === 0 ? undefined : new LivePart(found, form === 'text');
}
