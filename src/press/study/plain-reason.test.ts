import { describe, expect, it } from 'vitest';
import { plainReason } from './plain-reason.ts';

const say = (message: string) =>
  plainReason(message, (id) => (id === 'power-off/base-turn-late' ? 'base turn late' : undefined));

describe('what a directive says of a flight, to a student', () => {
  it('leaves out what the author is to write', () => {
    expect(say('Osier 15 stalls at 40 kt in a bank of 60°: write a smaller `bank`')).toBe(
      'Osier 15 stalls at 40 kt in a bank of 60°.',
    );
    expect(
      say('There is no band to print: the spot is not made in this wind. Take `::gates` out, or another'),
    ).toBe('There is no band to print: the spot is not made in this wind.');
    expect(say('This flight has no final leg: leave `::final-sight` out, or plan another')).toBe(
      'This flight has no final leg.',
    );
  });

  it('keeps the reason, and calls a fault by its name', () => {
    expect(
      say('The fault `power-off/base-turn-late` is not flown here: This approach has no base turn.'),
    ).toBe('The fault “base turn late” is not flown here: This approach has no base turn.');
    expect(say('The 90 approach has no key position `downwind-key`; it has `final`')).toBe(
      'The 90 approach has no key position downwind-key; it has final.',
    );
  });
});
