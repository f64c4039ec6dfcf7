import { z } from 'zod';

/** Ids of rows of the school's faults, as a directive lists them: a space or a comma between them. */
export const rowIds = z.string().transform((text) => text.split(/[\s,]+/).filter((id) => id !== ''));
