import type { z } from 'zod';
import type { DataPath } from './yaml-source.ts';

type Refinement = readonly [
  (value: unknown) => boolean,
  { path: (string | number)[]; error: string; params: { rule: string }; when: (payload: Payload) => boolean },
];
type Payload = z.core.ParsePayload;

/**
 * Checks some values of a section against each other, for `schema.refine(...crossCheck(...))`. What is wrong is
 * reported at the first of `needs` (dotted paths). It runs whenever these values are sound, whatever else is wrong
 * with the file, so that all messages come at once; it does not run where one of them is absent.
 */
export function crossCheck(
  needs: readonly string[],
  holds: (...values: number[]) => boolean,
  error: string,
): Refinement {
  const paths = needs.map((path) => path.split('.'));
  const values = (from: unknown) => paths.map((path) => at(from, path));
  return [
    (value) => holds(...(values(value) as number[])),
    {
      path: [...paths[0]!],
      error,
      params: { rule: 'cross-check' },
      when: ({ value, issues }) =>
        values(value).every((found) => typeof found === 'number') &&
        // A value with an issue of its own is still in the payload, as it was typed.
        !issues.some(
          ({ path }) => path?.length && paths.some((needed) => startsWith(needed, path as DataPath)),
        ),
    },
  ];
}

function at(value: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (from, key) =>
      typeof from === 'object' && from !== null && Object.hasOwn(from, key)
        ? (from as Record<string, unknown>)[key]
        : undefined,
    value,
  );
}

/** An issue with a section as a whole (an unknown key) does not spoil the values in it. */
function startsWith(needed: readonly string[], issue: DataPath): boolean {
  return issue.length === needed.length && issue.every((step, place) => step === needed[place]);
}
