import { describe, expect, it } from 'vitest';
import { requestFor } from '../../../tests/flight-school.ts';
import { flownFault } from '../../flight/faults/flown-fault.ts';
import { aviation } from '../figures/aviation.ts';
import { effectWords } from './effect-words.ts';

describe('a round-out that ends too high', () => {
  const begun = (higher: number) => {
    const fault = flownFault({ kind: 'round-out-height', amount: { by: higher } }, requestFor('osier'));
    if (!fault.flight.flown) throw new Error(String(fault.flight.reason));
    return {
      landing: fault.flight.landing,
      words: effectWords(fault, aviation).replaceAll('\u00a0', ' '),
    };
  };

  it('drops, and is not told as wheels put down, from 3 ft as from half a foot', () => {
    for (const [higher, told] of [
      [0.9, '3 ft'],
      [0.15, '0 ft'],
    ] as const) {
      const { landing, words } = begun(higher);
      expect(landing).toMatchObject({ how: 'dropped', drop: expect.closeTo(higher, 1) });
      expect(words).toMatch(/^It drops /);
      expect(words).toContain(`Falling ${told} with no lift left`);
      expect(words).not.toContain('The wheels touch');
    }
  });

  it('by less than four inches is a touchdown', () => {
    const { landing, words } = begun(0.09);
    expect(landing.how).toBe('touched');
    expect(words).toMatch(/^The wheels touch /);
    expect(words).not.toMatch(/drops|Falling/);
  });
});
