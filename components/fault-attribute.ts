import { mostDrawn } from './drawn-faults.ts';
import { rowIds } from './row-ids.ts';

/** The attribute `faults` of a drawing; `example` holds ids that an author might write. */
export function faultAttribute(example: string, sample: string) {
  return rowIds
    .refine((ids) => ids.length > 0 && ids.length <= mostDrawn, {
      error: `write ids of one to ${mostDrawn} faults, such as \`faults="${example}"\``,
    })
    .describe('Faults flown and drawn over the plan, dashed, each with where it ends')
    .meta({ takes: `ids of rows of \`faults/\`, at most ${mostDrawn}, a space between them`, sample })
    .optional();
}
