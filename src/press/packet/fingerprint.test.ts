import { describe, expect, it } from 'vitest';
import { canonicalJson, fingerprint } from './fingerprint.ts';

describe('the fingerprint of the inputs', () => {
  it('is eight hex digits', () => {
    expect(fingerprint({ a: 1 })).toMatch(/^[0-9a-f]{8}$/);
  });

  it('is the SHA-256 of the canonical JSON (FIPS 180-4 example: "abc" gives ba7816bf…)', () => {
    // The JSON of the string abc carries quotation marks; the digest of the bare text is the published one.
    expect(canonicalJson('abc')).toBe('"abc"');
    expect(fingerprint('abc')).not.toBe('ba7816bf');
    // SHA-256 of the five bytes "abc" with its quotation marks, from `printf '"abc"' | sha256sum`.
    expect(fingerprint('abc')).toBe('6cc43f85');
  });

  it('does not depend on the order of the keys', () => {
    expect(fingerprint({ wind: { from: 210, speed: 12 }, runway: '24' })).toBe(
      fingerprint({ runway: '24', wind: { speed: 12, from: 210 } }),
    );
  });

  it('changes with any value, and with the order of a list', () => {
    const base = fingerprint({ wind: 12, heights: [1, 2] });
    expect(fingerprint({ wind: 12.0001, heights: [1, 2] })).not.toBe(base);
    expect(fingerprint({ wind: 12, heights: [2, 1] })).not.toBe(base);
    expect(fingerprint({ wind: '12', heights: [1, 2] })).not.toBe(base);
  });

  it('takes an input that was left out and one that is undefined as the same', () => {
    expect(fingerprint({ wind: 12, gust: undefined })).toBe(fingerprint({ wind: 12 }));
  });

  it('refuses what has no JSON form', () => {
    expect(() => fingerprint({ wind: Number.NaN })).toThrow('finite');
    expect(() => fingerprint({ fly: () => 1 })).toThrow('plain data');
  });
});
