import { element } from './page-nodes.ts';
import { type Dial, type Dials, isSettable } from './study-setting.ts';
import type { StudyEvent } from './study-state.ts';

/** A dial as ordinary controls: a number to type and a slider, with one label. */
export interface DialControl {
  readonly root: HTMLElement;
  /** `value` may be one that cannot be set: then it is shown as it was typed, and marked. */
  show(value: number): void;
  disable(): void;
}

export function dialControl(name: keyof Dials, dial: Dial, send: (event: StudyEvent) => void): DialControl {
  const labelId = `study-${name}`;
  const number = input('number', dial.step, dial, labelId);
  const slider = input('range', dial.stride, dial, labelId);
  for (const each of [number, slider])
    each.addEventListener('input', () => send({ kind: 'moved', to: { [name]: each.valueAsNumber } }));
  number.addEventListener('change', () => send({ kind: 'typing-done', dial: name }));
  const label = element('span', 'study-label', `${dial.label}, ${dial.unit}`);
  label.id = labelId;
  return {
    root: element('div', 'study-dial', label, number, slider),
    show: (value) => {
      // Somebody may be typing in it.
      if (!Number.isNaN(value) && number.valueAsNumber !== value) number.value = String(value);
      if (isSettable(value, dial)) {
        slider.value = String(value);
        number.removeAttribute('aria-invalid');
      } else number.setAttribute('aria-invalid', 'true');
    },
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
