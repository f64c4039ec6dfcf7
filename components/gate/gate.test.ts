import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody, sayIn } from '../trial-packet.ts';

const plan = flyTrial();
const gateAt = (id: string) => plan.gates.find(({ at }) => at === id)!;

describe(':gate[…]', () => {
  it('rounds the low edge up and the high edge down, to 10 ft', () => {
    for (const id of ['downwind-key', 'base-key', 'final']) {
      const { low, high } = gateAt(id);
      const say = (edge: string) =>
        Number(/^[\d,]+(?= ft$)/.exec(sayIn(`:gate[${id}]{edge=${edge}}`, plan))![0].replace(',', ''));
      const [lowFeet, highFeet] = [low! / 0.3048, high! / 0.3048];
      expect(say('low')).toBeGreaterThanOrEqual(lowFeet);
      expect(say('low')).toBeLessThan(lowFeet + 10);
      expect(say('high')).toBeLessThanOrEqual(highFeet);
      expect(say('high')).toBeGreaterThan(highFeet - 10);
    }
  });

  it('has the planned height between its edges', () => {
    const { low, high } = gateAt('downwind-key');
    expect(low!).toBeLessThan(304.8);
    expect(high!).toBeGreaterThan(304.8);
  });

  it('says where there is no edge or no gate', () => {
    const open = { ...plan, gates: [{ ...gateAt('final'), high: null }] };
    expect(sayIn(':gate[final]{edge=high}', open)).toBe('no sound height was found');
    expect(renderBody(':gate[base-key]{edge=low}', open).messages).toEqual([
      '4:1 There is no gate at `base-key`: there are gates at `final`',
    ]);
  });

  it('needs to know which edge', () => {
    expect(renderBody(':gate[final]', plan).messages).toEqual([
      '4:2 `gate` needs `edge=…` in its braces: write `edge=low` or `edge=high`',
    ]);
  });
});
