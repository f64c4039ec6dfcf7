import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Edition } from '../../../components/context.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { contentHeight, type Paper } from '../paper/paper.ts';
import { settingOf } from './setting.ts';

export const editionNames: Readonly<Record<Edition, string>> = {
  instructor: "Instructor's edition",
  student: "Student's edition",
};

/** What the pages are computed for, in a block; only the entries with these labels, where some are named. */
export function settingList(plan: Plan, units: PageUnits, only?: readonly string[]): Element {
  return h(
    'dl',
    { class: 'setting' },
    settingOf(plan, units)
      .filter(({ label }) => only?.includes(label) ?? true)
      .map(({ label, value, detail }) =>
        h('div', [h('dt', label), h('dd', [value, ' ', h('small', detail)])]),
      ),
  );
}

/** mm between two lines to write on. */
const ruleSpacing = 9;

/** Lines to write on, which a browser repeats on every page; whatever is as wide as the page covers them. */
export function ruledMargin(paper: Paper): Element {
  const count = Math.floor(contentHeight(paper) / ruleSpacing);
  return h(
    'div',
    { class: 'ruled-margin', ariaHidden: 'true' },
    Array.from({ length: count }, () => h('span')),
  );
}
