import { createHash } from 'node:crypto';

/**
 * A short mark that is the same for the same inputs and different for others: the first 8 hex digits of the SHA-256
 * of the inputs written as canonical JSON (keys sorted, so that the order in a file does not matter). Throws where a
 * value has no JSON form (a function, a number that is not finite): a fingerprint that leaves out an input would call
 * two different packets the same.
 */
export function fingerprint(inputs: unknown): string {
  return digest(inputs).slice(0, 8);
}

/** All hex digits of it, which tell what was printed from what. Throws as `fingerprint` does. */
export function digest(inputs: unknown): string {
  return createHash('sha256').update(canonicalJson(inputs)).digest('hex');
}

/** JSON with sorted keys and no spaces; a key whose value is undefined is left out, as JSON does. */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return JSON.stringify(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value))
      throw new TypeError(`A fingerprint needs finite numbers; one input is ${value}.`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item ?? null)).join(',')}]`;
  if (value instanceof Date) return JSON.stringify(value.toISOString());
  if (typeof value === 'object') {
    const entries = Object.entries(value as Record<string, unknown>)
      .filter(([, item]) => item !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, item]) => `${JSON.stringify(key)}:${canonicalJson(item)}`);
    return `{${entries.join(',')}}`;
  }
  throw new TypeError(`A fingerprint is made from plain data; one input is a ${typeof value}.`);
}
