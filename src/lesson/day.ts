import type { z } from 'zod';
import { camelKeys } from '../school/camel-keys.ts';
import { crossCheck } from '../school/cross-check.ts';
import { quantity, quantityOrShare, section } from '../school/fields.ts';

const [low, high] = ['1 kt', '60 kt'] as const;

/** The day that a lesson asks for. */
export const day = section(
  {
    'most-wind': quantity('speed', low, high, '10 kt')
      .describe('The most surface wind; the gust counts where there is one')
      .optional(),
    'most-crosswind': quantityOrShare('speed', [low, high], '4 kt', "the aircraft's own crosswind limit")
      .describe('The most wind across the runway; the gust counts where there is one')
      .optional(),
    'least-crosswind': quantity('speed', low, high, '2 kt')
      .describe('The least wind across the runway, gusts not counted')
      .optional(),
    'least-wind': quantity('speed', low, high, '4 kt')
      .describe('The least surface wind, gusts not counted')
      .optional(),
  },
  '{ most-wind: 10 kt }',
)
  .refine((asked) => Object.keys(asked).length > 0, {
    error:
      'the section asks for nothing: write one or more of `most-wind`, `most-crosswind`, `least-wind`, `least-crosswind` in it',
    // An unknown key is reported as such.
    when: ({ issues }) => issues.length === 0,
  })
  .refine(
    ...crossCheck(
      ['least-wind', 'most-wind'],
      (least, most) => least <= most,
      'is more than `most-wind`, and no wind is both: lower it, or raise `most-wind`',
    ),
  )
  .meta({ minProperties: 1 })
  .transform(camelKeys);

/** m/s; the crosswind may be a share of the limit of the aircraft. */
export type Day = z.output<typeof day>;
