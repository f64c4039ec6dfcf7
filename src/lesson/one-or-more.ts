import { z } from 'zod';
import { type Field, isAbsent, list } from '../school/fields.ts';

/** A list of front matter that may be typed as a single value: `weight-shift`, or `[weight-shift, three-axis]`. */
export function oneOrMore<T>(item: Field<T>, example: string) {
  const many = list(item, example, 1);
  const read = z.unknown().transform((input, context): T[] => {
    if (isAbsent(input)) {
      context.addIssue({ code: 'custom', message: example });
      return z.NEVER;
    }
    const result = typeof input === 'string' ? item.safeParse(input) : many.safeParse(input);
    if (result.success) return Array.isArray(result.data) ? result.data : [result.data];
    for (const { message, path } of result.error.issues) {
      context.addIssue({ code: 'custom', message, path: [...path] });
    }
    return z.NEVER;
  });
  return read.meta({ readsLike: z.union([item, many]) });
}
