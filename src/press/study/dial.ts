import { element } from './page-nodes.ts';
import type { Dial } from './study-setting.ts';

/** A dial as ordinary controls: a number to type and a slider, with one label. */
export interface DialControl {
  readonly root: HTMLElement;
  /** Undefined while what is typed is no number that can be set. */
  value(): number | undefined;
  set(value: number): void;
  disable(): void;
}

export function dialControl(name: string, dial: Dial, onChange: () => void): DialControl {
  const labelId = `study-${name}`;
  const number = input('number', dial.step, dial, labelId);
  const slider = input('range', dial.stride, dial, labelId);
  const set = (value: number) => {
    number.value = String(value);
    slider.value = String(value);
    number.removeAttribute('aria-invalid');
  };
  const value = () => {
    const typed = number.valueAsNumber;
    return Number.isFinite(typed) && typed >= dial.least && typed <= dial.most ? typed : undefined;
  };
  slider.addEventListener('input', () => {
    set(slider.valueAsNumber);
    onChange();
  });
  number.addEventListener('input', () => {
    const typed = value();
    number.toggleAttribute('aria-invalid', typed === undefined);
    if (typed === undefined) number.setAttribute('aria-invalid', 'true');
    else slider.value = String(typed);
    onChange();
  });
  // What cannot be set is put to the nearest that can, once the typing is done.
  number.addEventListener('change', () => {
    if (value() !== undefined) return;
    const typed = number.valueAsNumber;
    set(Number.isFinite(typed) ? Math.min(dial.most, Math.max(dial.least, typed)) : dial.printed);
    onChange();
  });
  set(dial.printed);
  const label = element('span', 'study-label', `${dial.label}, ${dial.unit}`);
  label.id = labelId;
  return {
    root: element('div', 'study-dial', label, number, slider),
    value,
    set,
    disable: () => {
      number.disabled = true;
      slider.disabled = true;
    },
  };
}

function input(
  type: 'number' | 'range',
  step: number,
  { least, most }: Dial,
  labelId: string,
): HTMLInputElement {
  const made = element('input', '');
  made.type = type;
  made.min = String(least);
  made.max = String(most);
  made.step = String(step);
  made.setAttribute('aria-labelledby', labelId);
  if (type === 'number') made.inputMode = 'numeric';
  return made;
}
