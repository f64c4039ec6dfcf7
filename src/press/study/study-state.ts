import { type Dial, type Dials, isSettable, nearestSettable, type Setting } from './study-setting.ts';

/** What the student has done to the page. Everything that is drawn follows from it. */
export interface StudyState {
  readonly dials: Dials;
  /** The packet's own setting. */
  readonly home: Setting;
  /** What is in the controls: a dial may hold a number that cannot be set, NaN where it holds none. */
  readonly typed: Setting;
  /** `file/row`, or '' for none. */
  readonly fault: string;
  /** Where that fault ends, once it is flown. */
  readonly faultEnd: string | undefined;
  readonly isPrinting: boolean;
  /** Whether the controls are open, where the screen is small. */
  readonly isOpen: boolean;
}

export type StudyEvent =
  | { readonly kind: 'moved'; readonly to: Partial<Setting> }
  | { readonly kind: 'typing-done'; readonly dial: keyof Dials }
  | { readonly kind: 'fault-chosen'; readonly fault: string }
  | { readonly kind: 'fault-flown'; readonly fault: string; readonly end: string }
  | { readonly kind: 'put-back' }
  | { readonly kind: 'print-begun' }
  | { readonly kind: 'print-ended' }
  | { readonly kind: 'controls-toggled' };

export function printedState(dials: Dials, home: Setting): StudyState {
  return {
    dials,
    home,
    typed: home,
    fault: '',
    faultEnd: undefined,
    isPrinting: false,
    isOpen: false,
  };
}

/** Returns the same state where nothing changes. */
export function next(state: StudyState, event: StudyEvent): StudyState {
  switch (event.kind) {
    case 'moved':
      return { ...state, typed: { ...state.typed, ...event.to }, faultEnd: undefined };
    case 'typing-done': {
      const dial = state.dials[event.dial];
      const typed = state.typed[event.dial];
      if (isSettable(typed, dial)) return state;
      return next(state, { kind: 'moved', to: { [event.dial]: nearestSettable(typed, dial) } });
    }
    case 'fault-chosen':
      return { ...state, fault: event.fault, faultEnd: undefined };
    case 'fault-flown':
      return event.fault === state.fault ? { ...state, faultEnd: event.end } : state;
    case 'put-back':
      return { ...state, typed: state.home, fault: '', faultEnd: undefined };
    case 'print-begun':
      return { ...state, isPrinting: true };
    case 'print-ended':
      return { ...state, isPrinting: false };
    case 'controls-toggled':
      return { ...state, isOpen: !state.isOpen };
  }
}

/** The setting to be flown, or the first dial that does not hold one. */
export function settingOf({ typed, dials }: StudyState): Setting | { readonly wrong: Dial } {
  const wrong = (['direction', 'speed', 'height'] as const).find(
    (name) => !isSettable(typed[name], dials[name]),
  );
  return wrong ? { wrong: dials[wrong] } : typed;
}

/** The state that the figures are drawn from: on paper it is the packet's own, whatever is on the screen. */
export function onPage(state: StudyState): StudyState {
  return state.isPrinting ? next(state, { kind: 'put-back' }) : state;
}
