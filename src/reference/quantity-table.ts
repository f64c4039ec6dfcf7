import { describeKind, quantityKinds } from '../units/quantity.ts';
import { code, table } from './markdown.ts';

/** Every kind of quantity with its units. */
export function quantityTable(): string {
  return table(
    ['Quantity', 'Units', 'Example'],
    quantityKinds.map((kind) => {
      const { what, units, example } = describeKind(kind);
      return [what.replace(/^an? /, ''), units.map(code).join(', '), code(example)];
    }),
  );
}

export const quantityWords =
  'Every quantity carries its unit; a bare number is refused, for nobody can tell feet from metres by looking. A space ' +
  'before the unit may be left out (`30deg`), capitals do not matter, and a thousand may have its comma (`1,000 ft`). ' +
  'The decimal sign is a point. Directions are true. A wind is the direction it blows from and its speed, `210/12kt`, ' +
  'or `calm`. Numbers without a unit are numbers by nature: a glide ratio (`6.4` or `6.4:1`), a load factor, a count.';
