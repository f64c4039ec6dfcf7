import type { DescribedSchema } from '../school/json-schema.ts';
import { code, sentence, table } from './markdown.ts';

/** Every key that may be typed, sections and lists opened, in the order of the definition. */
export function keyTable(schema: DescribedSchema): string {
  return table(['Key', 'What it is', 'What to write'], rowsOf(schema, []));
}

function rowsOf({ properties = {}, required = [] }: DescribedSchema, above: readonly string[]): string[][] {
  return Object.entries(properties).flatMap(([key, schema]) => {
    const steps = [...above, key];
    const name = steps.map(code).join(' › ');
    const own = [name, sentence(schema.description ?? ''), toWrite(schema, required.includes(key))];
    return [own, ...rowsOf(schema.items ?? schema, steps)];
  });
}

/** What to type for a key or an attribute, whether it must be there, and what holds where it is not. */
export function toWrite(schema: DescribedSchema, isRequired: boolean): string {
  const usual = schema.default;
  const example =
    schema.sample !== undefined && schema.enum === undefined ? `such as ${code(schema.sample)}` : '';
  const need = isRequired ? '**needed**' : '';
  const left = typeof usual === 'string' ? `left out: ${code(usual)}` : '';
  return [need, form(schema), example, left].filter((part) => part !== '').join('; ');
}

function form({ takes, items, properties, anyOf, ...schema }: DescribedSchema): string {
  if (takes !== undefined) return takes;
  if (schema.enum) return `one of ${schema.enum.map((each) => code(String(each))).join(', ')}`;
  // One value, or a list of them.
  if (anyOf?.[0]?.takes) return `${anyOf[0].takes}; several in a list, \`[a, b]\``;
  if (items) return items.properties ? 'a list, each with the keys below' : `a list, each ${items.takes}`;
  return properties ? 'the keys below' : '';
}
