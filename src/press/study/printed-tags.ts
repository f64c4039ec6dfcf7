import { element } from './page-nodes.ts';

const tagClass = 'study-tag';

/** Computed for the packet's own setting and not made again: each says so while another setting is shown. */
export function tagPrinted(words: string): void {
  for (const each of printedPlaces()) {
    const room = each.matches('table') ? (each.closest('.table-room') ?? each) : each;
    const before = room.previousElementSibling;
    if (before?.classList.contains(tagClass)) before.textContent = words;
    else room.before(element('p', tagClass, words));
  }
}

export function removeTags(): void {
  for (const tag of document.querySelectorAll(`.${tagClass}`)) tag.remove();
}

function printedPlaces(): Element[] {
  // The line under a table belongs to it.
  return [...document.querySelectorAll('[data-printed]:not(.source), .workings')];
}
