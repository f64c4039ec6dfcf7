import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { tickBox } from '../tick-box.ts';

/** One line of the grading: what is asked, and a box under each word of the school's scale. */
export function gradeRow(line: ElementContent[], grading: readonly string[]): Element {
  return h('tr', [
    h('th', { scope: 'row', style: 'font-weight:400' }, line),
    ...grading.map(() => h('td', { align: 'center' }, [tickBox()])),
  ]);
}
