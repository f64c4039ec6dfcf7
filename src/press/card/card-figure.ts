import type { Element } from 'hast';
import { h } from 'hastscript';
import { noBreakSpace } from '../../units/rounding.ts';

/** A printed figure, such as `1,000 ft`, in its parts; words have no unit. */
function partsOf(text: string): { readonly number: string; readonly unit: string } {
  const at = /\d/.test(text) ? text.lastIndexOf(noBreakSpace) : -1;
  return at < 0 ? { number: text, unit: '' } : { number: text.slice(0, at), unit: text.slice(at + 1) };
}

/** The number large, with its unit small beside it. The text stays as it was formatted. */
export function figure(text: string): Element {
  const { number, unit } = partsOf(text);
  if (unit === '') return h('b', { class: /\d/.test(number) ? 'figure' : 'figure words' }, number);
  return h('b', { class: 'figure' }, [number, noBreakSpace, h('span', { class: 'unit' }, unit)]);
}
