import { readdirSync, readFileSync } from 'node:fs';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { QuantityError } from '../units/quantity.ts';
import { parseFaults } from './faults.ts';
import { flyForms, readFlyText } from './fly-text.ts';

const kt = 1852 / 3600;
const change = (text: string) => readFlyText(text).change;

function reasonOf(text: string): string {
  try {
    readFlyText(text);
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
  return 'read without an error';
}

describe('what `fly` says', () => {
  it.each(flyForms)('is read as the reference writes it: $written', ({ written, key }) => {
    const read = readFlyText(written);
    expect(read.written).toBe(written);
    expect(written.startsWith(`${key}: `)).toBe(true);
  });
  it('is read in every form that is not another one', () => {
    for (const form of flyForms) {
      const value = form.written.slice(form.key.length + 2);
      expect(form.read(value), form.written).toEqual(change(form.written));
    }
  });
  it('becomes a change in SI', () => {
    expect(change('spacing: +40 %')).toEqual({ kind: 'spacing', amount: { factor: 1.4 } });
    expect(change('base-turn: 6 s early')).toEqual({ kind: 'base-turn', seconds: -6 });
    expect(change('base-turn: as in still air')).toEqual({ kind: 'base-turn-as-in-still-air' });
    expect(change('wind: −8 kt')).toEqual({ kind: 'wind', amount: { by: -8 * kt } });
    expect(change('final-turn bank: 15 deg')).toMatchObject({ amount: { to: (15 * Math.PI) / 180 } });
    expect(change('final-turn bank: +15 deg')).toMatchObject({ amount: { by: (15 * Math.PI) / 180 } });
    expect(change('glide speed: wandering 10 %')).toEqual({
      kind: 'glide-speed-wandering',
      amplitude: 0.1,
      period: 10,
    });
    expect(change('mass: -40 kg')).toEqual({ kind: 'mass', amount: { by: -40 } });
  });
  it('has a message that says what would be right', () => {
    expect(reasonOf('spacing +40 %')).toMatch(/no colon.*`spacing: \+40 %`/);
    expect(reasonOf('spaceing: +40 %')).toMatch(/did you mean `spacing`\?/);
    expect(reasonOf('spacing: 40 %')).toMatch(/`spacing: \+40 %`/);
    expect(reasonOf('spacing: +400 %')).toMatch(/-70 % to \+150 %/);
    expect(reasonOf('wind: +8')).toMatch(/no unit/);
    expect(reasonOf('throttle: 5 s early')).toMatch(/`throttle: 5 s late`/);
    expect(reasonOf('base-turn: 90 s late')).toMatch(/0 s to 60 s/);
  });
  it('stands in a file of faults, and an error has its line and column', () => {
    const file = new VFile({
      path: 'trial.yaml',
      value:
        'name: Trial\nsource: Invented.\nfaults:\n  - { id: a, fault: b, sign: c, cause: d, recovery: e, prevent: f,\n      fly: "spaceing: +40 %" }\n',
    });
    expect(parseFaults(file)).toBeUndefined();
    expect(file.messages.map(({ line, column }) => [line, column])).toEqual([[5, 12]]);
  });
  it('is understood wherever our own lessons say it', () => {
    const folder = new URL('../../lessons/faults/', import.meta.url);
    const files = readdirSync(folder);
    expect(files.length).toBeGreaterThan(2);
    for (const name of files) {
      const file = new VFile({ path: name, value: readFileSync(new URL(name, folder), 'utf8') });
      const value = parseFaults(file);
      expect(file.messages.map(String)).toEqual([]);
      expect(value!.faults.filter(({ fly }) => fly).length).toBeGreaterThan(1);
    }
  });
});
