import { describe, expect, it } from 'vitest';
import { fileId, spokenName } from './file-id.ts';

describe('the name of a file', () => {
  it.each([
    ['Osier 15', 'osier-15'],
    ['osier-15', 'osier-15'],
    ['osier-15.yaml', 'osier-15'],
    ['The half-circuit approach', 'the-half-circuit-approach'],
    ['Prés-salés', 'pres-sales'],
    ['  Withy (80) ', 'withy-80'],
    ['../../elsewhere', 'elsewhere'],
  ])('of %s is %s', (name, id) => expect(fileId(name)).toBe(id));

  it('is empty where nothing in the name can be in one', () => expect(fileId('***')).toBe(''));
});

describe('the name that people read', () => {
  it('is the one typed', () => expect(spokenName(' Osier  15')).toBe('Osier 15'));
  it('is worked out where that of a file was typed', () => {
    expect(spokenName('osier-15')).toBe('Osier 15');
    expect(spokenName('glide-in-the-wind.md')).toBe('Glide in the wind');
  });
});
