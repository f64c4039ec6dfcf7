import { describe, expect, it } from 'vitest';
import type { Dials, Setting } from './study-setting.ts';
import { next, onPage, printedState, type StudyEvent, type StudyState, settingOf } from './study-state.ts';

const dial = (label: string, printed: number, least: number, most: number) => ({
  label,
  unit: '',
  printed,
  least,
  most,
  step: 1,
  stride: 1,
});
const dials: Dials = {
  direction: dial('Wind from', 210, 10, 360),
  speed: dial('Wind speed', 12, 0, 20),
  height: dial('Height', 1000, 400, 2000),
};
const home: Setting = { direction: 210, speed: 12, height: 1000, power: 'idle' };
const printed = printedState(dials, home);

const reached = (...events: StudyEvent[]): StudyState => events.reduce(next, printed);
const moved = (to: Partial<Setting>): StudyEvent => ({ kind: 'moved', to });
const late = 'power-off/base-turn-late';
const chosen: StudyEvent = { kind: 'fault-chosen', fault: late };
const flown: StudyEvent = { kind: 'fault-flown', fault: late, end: 'short' };

describe('the study page as printed', () => {
  it("has the packet's own setting, and no fault", () => {
    expect(settingOf(printed)).toEqual(home);
    expect(printed).toMatchObject({ fault: '', faultEnd: undefined, isPrinting: false, isOpen: false });
  });
});

describe('a dial', () => {
  it('sets what it is moved to, and nothing else', () => {
    expect(settingOf(reached(moved({ speed: 5 }), moved({ height: 800 })))).toEqual({
      ...home,
      speed: 5,
      height: 800,
    });
    expect(settingOf(reached(moved({ power: 'stopped' })))).toEqual({ ...home, power: 'stopped' });
  });

  it('takes both of its ends, and no number beyond them', () => {
    for (const height of [400, 2000])
      expect(settingOf(reached(moved({ height })))).toEqual({ ...home, height });
    for (const height of [399, 2001])
      expect(settingOf(reached(moved({ height })))).toEqual({ wrong: dials.height });
  });

  it('with a wrong number keeps it as it is typed, sets nothing, and the first wrong one is named', () => {
    const state = reached(moved({ height: 1 }), moved({ speed: Number.NaN }));
    expect(state.typed).toEqual({ ...home, height: 1, speed: Number.NaN });
    expect(settingOf(state)).toEqual({ wrong: dials.speed });
    expect(settingOf(next(state, moved({ speed: 3 })))).toEqual({ wrong: dials.height });
    expect(settingOf(next(state, moved({ speed: 3, height: 900 })))).toEqual({
      ...home,
      speed: 3,
      height: 900,
    });
  });

  it('goes to the nearest that can be set once the typing is done, to the printed one where there is no number', () => {
    const done = (dial: keyof Dials): StudyEvent => ({ kind: 'typing-done', dial });
    expect(reached(moved({ height: 1 }), done('height')).typed.height).toBe(400);
    expect(reached(moved({ height: 9999 }), done('height')).typed.height).toBe(2000);
    expect(reached(moved({ height: Number.NaN }), done('height')).typed.height).toBe(1000);
    const good = reached(moved({ height: 700 }));
    expect(next(good, done('height'))).toBe(good);
    // The number of the other dial is not touched.
    expect(reached(moved({ height: 1 }), done('speed')).typed.height).toBe(1);
  });
});

describe('a fault', () => {
  it('is chosen, then flown: its end is known until something is moved or another is chosen', () => {
    expect(reached(chosen)).toMatchObject({ fault: late, faultEnd: undefined });
    expect(reached(chosen, flown)).toMatchObject({ fault: late, faultEnd: 'short' });
    expect(reached(chosen, flown, moved({ speed: 3 }))).toMatchObject({ fault: late, faultEnd: undefined });
    expect(
      reached(chosen, flown, { kind: 'fault-chosen', fault: 'power-off/other' }).faultEnd,
    ).toBeUndefined();
  });

  it('that was flown for one no longer chosen ends nowhere', () => {
    const none = reached(chosen, { kind: 'fault-chosen', fault: '' });
    expect(next(none, flown)).toBe(none);
  });

  it('stays chosen while a number is wrong', () => {
    expect(reached(chosen, moved({ height: 1 }), moved({ height: 900 })).fault).toBe(late);
  });
});

describe('printing', () => {
  const set = reached(moved({ speed: 5 }), chosen, flown);
  const begun = next(set, { kind: 'print-begun' });

  it("puts the packet's own setting on the paper, and leaves the screen's alone", () => {
    expect(settingOf(onPage(begun))).toEqual(home);
    expect(onPage(begun).fault).toBe('');
    expect(settingOf(begun)).toEqual({ ...home, speed: 5 });
    expect(begun.fault).toBe(late);
  });

  it('ended, brings back what was set', () => {
    const ended = next(begun, { kind: 'print-ended' });
    expect(ended).toEqual(set);
    expect(onPage(ended)).toBe(ended);
  });

  it('is of the packet also while a number is wrong', () => {
    expect(settingOf(onPage(reached(moved({ height: 1 }), { kind: 'print-begun' })))).toEqual(home);
  });
});

describe('put back', () => {
  it('is as printed, whatever was set; the controls stay open', () => {
    const open = reached({ kind: 'controls-toggled' });
    const set = [moved({ height: 1, speed: 3, power: 'stopped' }), chosen, flown].reduce(next, open);
    expect(next(set, { kind: 'put-back' })).toEqual(open);
    expect(open.isOpen).toBe(true);
    expect(next(open, { kind: 'controls-toggled' })).toEqual(printed);
  });
});
