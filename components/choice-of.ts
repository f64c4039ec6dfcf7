import { z } from 'zod';

/**
 * One of the names of a record, for brackets and attributes: the message lists them, the nearest first. `meanings`
 * say on the author's reference page what each name gives, where the name alone does not.
 */
export function nameOf<Name extends string>(
  record: Readonly<Record<Name, unknown>>,
  meanings?: Readonly<Record<Name, string>>,
) {
  const names = z.enum(Object.keys(record) as [Name, ...Name[]]);
  return meanings ? names.meta({ meanings }) : names;
}
