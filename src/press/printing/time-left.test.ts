import { describe, expect, it } from 'vitest';
import { leftWords, secondsLeft } from './time-left.ts';

describe('the time left', () => {
  it('is not known after the first ones', () => {
    expect(secondsLeft(0, 36, 0)).toBeUndefined();
    expect(secondsLeft(2, 36, 9)).toBeUndefined();
  });

  it('is then as long for each as it was so far', () => {
    expect(secondsLeft(4, 36, 6)).toBeCloseTo(48, 9);
    expect(secondsLeft(36, 36, 54)).toBe(0);
  });

  it('is said no finer than it can be known', () => {
    expect(leftWords(4)).toBe('a few seconds left');
    expect(leftWords(41)).toBe('about 50 s left');
    expect(leftWords(89)).toBe('about 90 s left');
    expect(leftWords(100)).toBe('about 2 min left');
    expect(leftWords(3599)).toBe('about 60 min left');
  });
});
