import { describe, expect, it } from 'vitest';
import type { Gate } from '../../flight/terms/plan.ts';
import { edgeTexts, gateBand } from './gate-band.ts';

const feet = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
const gate = (low: number | null, plan: number, high: number | null, unit = 0.3048): Gate => ({
  at: 'final',
  low: low === null ? null : low * unit,
  plan: plan * unit,
  high: high === null ? null : high * unit,
});
const texts = (each: Gate, units: typeof feet | typeof metric = feet) => {
  const { low, high } = edgeTexts(each, units);
  return [low, high].map((text) => text.replaceAll('\u00a0', ' '));
};

describe('the band of a gate', () => {
  it('is rounded inward', () => {
    expect(texts(gate(411, 500, 639))).toEqual(['420 ft', '630 ft']);
    expect(texts(gate(201, 240, 249, 1), metric)).toEqual(['205 m', '245 m']);
    expect(texts(gate(420, 500, 630))).toEqual(['420 ft', '630 ft']);
  });

  it('has the plan for its edge where rounding would put the plan outside', () => {
    expect(texts(gate(382, 383, 484))).toEqual(['the plan', '480 ft']);
    expect(texts(gate(300, 387, 388))).toEqual(['300 ft', 'the plan']);
    // Printed to the foot beside its limit, the plan would be under an edge of 300 ft.
    expect(texts(gate(297, 299, 350))).toEqual(['the plan', '350 ft']);
    expect(texts(gate(300, 300, 300))).toEqual(['300 ft', '300 ft']);
    // The plan is really outside: the edge stays a figure.
    expect(texts(gate(382, 370, 484))).toEqual(['390 ft', '480 ft']);
  });

  it('is none where its edges cross, or cross once they are rounded', () => {
    expect(gateBand(gate(420, 400, 380), feet)).toEqual({ none: 'crossed' });
    expect(gateBand(gate(1362, 1365, 1368), feet)).toEqual({ none: 'too-narrow' });
    expect(gateBand(gate(1371, 1371, 1369), feet)).toEqual({ none: 'too-narrow' });
    expect(gateBand(gate(201, 203, 204, 1), metric)).toEqual({ none: 'too-narrow' });
    expect(texts(gate(1362, 1365, 1368))).toEqual(['no band', 'no band']);
    expect(texts(gate(1361, 1370, 1371))).toEqual(['1,370 ft', '1,370 ft']);
  });

  it('is none where no path comes to the spot, and open where one edge was not found', () => {
    expect(gateBand(gate(null, 400, null), feet)).toEqual({ none: 'no-path' });
    expect(texts(gate(null, 400, 500))).toEqual(['–', '500 ft']);
    expect(texts(gate(300, 400, null))).toEqual(['300 ft', '–']);
  });
});
