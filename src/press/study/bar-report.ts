import type { BarWords } from './bar-words.ts';
import { faultPanelId } from './fault-panel.ts';
import { element, setWords } from './page-nodes.ts';

/** Long enough for a slider to come to rest: a reader who listens hears where it stopped, not every step. */
const quiet = 500;

/** The lines of the bar that say what is shown, and the same for a reader who listens. */
export function barReport() {
  const headline = element('p', 'study-headline');
  const detail = element('p', 'study-detail');
  const cautions = element('div', 'study-cautions');
  // On a small screen it scrolls.
  cautions.tabIndex = 0;
  cautions.setAttribute('role', 'group');
  cautions.setAttribute('aria-label', 'Cautions of this flight');
  const spoken = element('p', 'sr-only');
  spoken.setAttribute('role', 'status');
  let timer: ReturnType<typeof setTimeout> | undefined;
  return {
    lines: [headline, detail, cautions],
    spoken,
    show: (words: BarWords) => {
      headline.replaceChildren(element('strong', '', words.headline));
      detail.replaceChildren(setWords(words.detail), ...faultLink(words));
      const list = cautionList(words);
      cautions.replaceChildren(...list);
      clearTimeout(timer);
      const all = [
        words.headline,
        detail.textContent,
        ...list.map(({ textContent }) => textContent ?? ''),
      ].join(' ');
      timer = setTimeout(() => {
        if (spoken.textContent !== all) spoken.textContent = all;
      }, quiet);
    },
  };
}

function faultLink({ fault }: BarWords): (HTMLElement | string)[] {
  if (fault === undefined) return [];
  const link = element('a', '', 'See it');
  link.href = `#${faultPanelId}`;
  return [` ${fault} `, link];
}

function cautionList({ cautions, refused }: BarWords): HTMLElement[] {
  if (refused && cautions.length === 0) return [];
  if (cautions.length === 0) return [element('p', '', 'No caution of this flight beyond the standing ones.')];
  const count =
    cautions.length === 1 ? '1 caution of this flight' : `${cautions.length} cautions of this flight`;
  const items = cautions.map(({ sentence, source }) =>
    element('li', '', setWords(`${sentence} `), element('span', 'study-from', setWords(`Limit: ${source}`))),
  );
  return [element('p', '', element('strong', '', count)), element('ul', '', ...items)];
}
