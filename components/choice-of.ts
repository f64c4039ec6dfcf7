import { z } from 'zod';

/** One of the names of a record, for brackets and attributes: the message lists them, the nearest first. */
export function nameOf<Name extends string>(record: Readonly<Record<Name, unknown>>) {
  return z.enum(Object.keys(record) as [Name, ...Name[]]);
}
