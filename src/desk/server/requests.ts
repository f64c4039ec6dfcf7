import { z } from 'zod';
import type { PageRequest, PrintRequest, SaveRequest } from '../api.ts';

const text = z.string();
const path = z.string().max(300);
const name = z.string().max(200).optional();

const choices = {
  aircraft: name,
  airfield: name,
  runway: name,
  wind: name,
  power: z.enum(['idle', 'stopped']).optional(),
  paper: z.enum(['A4', 'Letter']).optional(),
};
const edition = ['student', 'instructor'] as const;

export const saveRequest: z.ZodType<SaveRequest> = z.strictObject({
  path,
  text,
  version: z.string().max(64).nullable(),
});

export const pageRequest: z.ZodType<PageRequest> = z.strictObject({
  path,
  text: text.optional(),
  choices: z.strictObject({ ...choices, edition: z.enum(edition).optional() }).optional(),
  unsaved: z.record(path, text).optional(),
  have: z.array(z.string().max(64)).max(10_000).optional(),
});

export const printRequest: z.ZodType<PrintRequest> = z.strictObject({
  path,
  choices: z.strictObject({ ...choices, edition: z.enum([...edition, 'both']).optional() }).optional(),
});
