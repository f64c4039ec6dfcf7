import { describe, expect, it } from 'vitest';
import type { Gate } from '../../flight/terms/plan.ts';
import { formatKeyHeight } from '../keys/key-height.ts';
import { edgeTexts } from './gate-band.ts';
import { inHandBelow } from './in-hand.ts';

const feet = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
const foot = 0.3048;
type Cautions = Parameters<typeof inHandBelow>[1];

const gate = (low: number | null, plan: number, high: number | null = 2000, unit = foot): Gate => ({
  at: 'base-key',
  low: low === null ? null : low * unit,
  plan: plan * unit,
  high: high === null ? null : high * unit,
});

function said(each: Gate, cautions: Cautions = [], units: typeof feet | typeof metric = feet) {
  const inHand = inHandBelow(each, cautions, units);
  return inHand && `${inHand.height < 0 ? '-' : ''}${inHand.text.replaceAll('\u00a0', ' ')}`;
}

describe('what a plan has in hand below', () => {
  it('is the printed plan less the printed edge', () => {
    expect(said(gate(640, 700))).toBe('60 ft');
    // 700 less 650 as printed, while the figures themselves are 57 apart.
    expect(said(gate(641, 698))).toBe('50 ft');
    expect(said(gate(100, 1250))).toBe('1,150 ft');
    expect(said(gate(201, 240, 400, 1), [], metric)).toBe('35 m');
    expect(said(gate(700, 700))).toBe('0 ft');
  });

  it('is never more than there is', () => {
    // 650 less 600 as printed, and 45 ft in truth.
    expect(said(gate(600, 645))).toBe('40 ft');
    expect(said(gate(600, 645.1))).toBe('40 ft');
    expect(said(gate(200, 217.5, 400, 1), [], metric)).toBe('15 m');
  });

  it('is that of a reader for every height, or less where that would be more than there is', () => {
    const number = (text: string) => Number(text.replace(/[^\d.]/g, ''));
    for (let plan = 500; plan < 560; plan += 0.7) {
      for (let low = 420; low < 520; low += 7.3) {
        const each = gate(low, plan);
        const text = said(each);
        const edge = edgeTexts(each, feet).low;
        if (edge === 'the plan') expect(text).toBeUndefined();
        else {
          const printed = number(formatKeyHeight({ id: each.at, height: each.plan }, [], feet));
          const below = inHandBelow(each, [], feet)!.height / foot;
          expect(below).toBeLessThanOrEqual(printed - number(edge) + 1e-6);
          expect(below).toBeLessThanOrEqual(plan - low + 1e-6);
          expect(below).toBeGreaterThan(Math.min(printed - number(edge), plan - low) - 10);
          expect(number(text!)).toBe(Math.round(Math.abs(below)));
        }
      }
    }
  });

  it('has the digit of a plan that is held against a limit', () => {
    const limit = 300 * foot;
    const each: Gate = { ...gate(240, 297), at: 'final' };
    const held = { code: 'final-turn-low', at: 'final', value: each.plan, limit } as const;
    expect(formatKeyHeight({ id: 'final', height: each.plan }, [held], feet)).toMatch(/^297.ft$/);
    expect(said(each, [held])).toBe('57 ft');
  });

  it('is nothing where there is no edge to take, and negative below the band', () => {
    for (const each of [gate(null, 700), gate(null, 700, null), gate(800, 700, 600), gate(382, 383)])
      expect(said(each)).toBeUndefined();
    expect(said(gate(700, 660))).toBe('-40 ft');
  });
});
