import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody, sayIn } from '../trial-packet.ts';

const plan = flyTrial();
const gateAt = (id: string) => plan.gates.find(({ at }) => at === id)!;

describe(':gate[…]', () => {
  const ft = (height: number) => height * 0.3048;
  const withGate = (low: number, planned: number, high: number) => ({
    ...plan,
    gates: [{ at: 'final' as const, low: ft(low), plan: ft(planned), high: ft(high) }],
  });

  it('rounds the low edge up and the high edge down, to 10 ft', () => {
    const band = withGate(411, 500, 639);
    expect(sayIn(':gate[final]{edge=low}', band)).toBe('420 ft');
    expect(sayIn(':gate[final]{edge=high}', band)).toBe('630 ft');
  });

  it('says what the table says where the plan is at the edge, and where there is no band', () => {
    expect(sayIn(':gate[final]{edge=low}', withGate(382, 383, 484))).toMatch(/^the plan, [\d,]+ ft$/);
    for (const edge of ['low', 'high']) {
      expect(sayIn(`:gate[final]{edge=${edge}}`, withGate(1362, 1365, 1368))).toBe('none, there is no band');
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
