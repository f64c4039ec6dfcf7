import type { FaultsFile } from '../../school/faults.ts';
import { barReport } from './bar-report.ts';
import type { BarWords } from './bar-words.ts';
import { dialControl } from './dial.ts';
import { faultControl } from './fault-control.ts';
import { element } from './page-nodes.ts';
import { powerControl } from './power-control.ts';
import type { Dials } from './study-setting.ts';
import type { StudyEvent, StudyState } from './study-state.ts';

export const standingWords =
  'Computed on this page for practice on the ground. The aircraft’s handbook, local rules and your instructor prevail.';

export interface StudyBar {
  readonly root: HTMLElement;
  show(state: StudyState): void;
  /** How the setting came out. */
  say(words: BarWords): void;
}

export interface BarInput {
  readonly dials: Dials;
  readonly faults: readonly (readonly [string, FaultsFile])[];
  /** False where the packet's winds are given for each height. */
  readonly windMoves: boolean;
  readonly send: (event: StudyEvent) => void;
}

/** The controls, and what they lead to, in a bar that stays in sight. It keeps nothing: it shows what it is given. */
export function studyBar({ dials, faults, windMoves, send }: BarInput): StudyBar {
  const direction = dialControl('direction', dials.direction, send);
  const speed = dialControl('speed', dials.speed, send);
  const height = dialControl('height', dials.height, send);
  const power = powerControl(send);
  const fault = faultControl(faults, send);
  const report = barReport();
  const controls = element(
    'div',
    'study-controls',
    ...[direction, speed, height, power, fault].map(({ root }) => root),
  );
  controls.id = 'study-controls';
  if (!windMoves) {
    direction.disable();
    speed.disable();
    controls.append(
      element(
        'p',
        'study-note',
        "The packet's winds are given for each height: on this page they stay as they are.",
      ),
    );
  }
  const open = button('Controls', () => send({ kind: 'controls-toggled' }));
  open.className = 'study-open';
  open.setAttribute('aria-controls', controls.id);
  const asPrinted = button('As printed', () => send({ kind: 'put-back' }));
  const root = element(
    'aside',
    'study',
    element('div', 'study-top', controls, element('div', 'study-buttons', open, asPrinted)),
    ...report.lines,
    element('p', 'study-standing', standingWords),
    report.spoken,
  );
  root.setAttribute('aria-label', 'Practice on this page');
  return {
    root,
    show: ({ typed, fault: chosen, isOpen }) => {
      direction.show(typed.direction);
      speed.show(typed.speed);
      height.show(typed.height);
      power.show(typed.power);
      fault.show(chosen);
      open.setAttribute('aria-expanded', String(isOpen));
      root.classList.toggle('open', isOpen);
    },
    say: (words) => {
      root.classList.toggle('moved', words.moved);
      report.show(words);
    },
  };
}

function button(words: string, onClick: () => void): HTMLButtonElement {
  const made = element('button', '', words);
  made.type = 'button';
  made.addEventListener('click', onClick);
  return made;
}
