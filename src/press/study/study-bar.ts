import type { Power } from '../../flight/terms/aircraft.ts';
import type { FaultsFile } from '../../school/faults.ts';
import { dialControl } from './dial.ts';
import { element, setWords } from './page-nodes.ts';
import type { Dial, Dials, Setting } from './study-setting.ts';

export const standingWords =
  'Computed on this page for practice on the ground. The aircraft’s handbook, local rules and your instructor prevail.';

/** What the bar says of the setting that the page shows. */
export interface BarState {
  readonly moved: boolean;
  /** One line, always in sight. */
  readonly headline: string;
  readonly detail: string;
  /** What came of the fault that is flown over it, and the id of where it is said in full; undefined for none. */
  readonly fault: { readonly words: string; readonly id: string } | undefined;
  readonly cautions: readonly SaidCaution[];
  /** True where it is not to be flown. */
  readonly refused: boolean;
}

/** A caution as it is said: its grade and what was found, and where its limit comes from. */
export interface SaidCaution {
  readonly sentence: string;
  readonly source: string;
}

export interface StudyBar {
  readonly root: HTMLElement;
  /** Or, while a number is none that can be set, what can. */
  setting(): Setting | { readonly wrong: string };
  /** `file/row`, or '' for none. */
  fault(): string;
  reset(): void;
  show(state: BarState): void;
}

export interface BarInput {
  readonly dials: Dials;
  /** The packet's own setting. */
  readonly home: Setting;
  readonly faults: readonly (readonly [string, FaultsFile])[];
  /** False where the packet's winds are given for each height. */
  readonly windMoves: boolean;
  readonly onChange: () => void;
}

/** Long enough for a slider to come to rest: a reader who listens hears where it stopped, not every step. */
const quiet = 500;

export function studyBar({ dials, home, faults, windMoves, onChange }: BarInput): StudyBar {
  const direction = dialControl('direction', dials.direction, onChange);
  const speed = dialControl('speed', dials.speed, onChange);
  const height = dialControl('height', dials.height, onChange);
  const power = powerControl(home.power, onChange);
  const fault = faultControl(faults, onChange);
  const asPrinted = button('As printed');
  const open = button('Controls');
  const headline = element('p', 'study-headline');
  const detail = element('p', 'study-detail');
  const cautions = element('div', 'study-cautions');
  // On a small screen it scrolls.
  cautions.tabIndex = 0;
  cautions.setAttribute('role', 'group');
  cautions.setAttribute('aria-label', 'Cautions of this flight');
  const spoken = element('p', 'sr-only');
  spoken.setAttribute('role', 'status');
  const controls = element(
    'div',
    'study-controls',
    direction.root,
    speed.root,
    height.root,
    power.root,
    fault.root,
  );
  controls.id = 'study-controls';
  open.setAttribute('aria-controls', controls.id);
  open.className = 'study-open';
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
  const root = element(
    'aside',
    'study',
    element('div', 'study-top', controls, element('div', 'study-buttons', open, asPrinted)),
    headline,
    detail,
    cautions,
    element('p', 'study-standing', standingWords),
    spoken,
  );
  root.setAttribute('aria-label', 'Practice on this page');

  const setOpen = (isOpen: boolean) => {
    open.setAttribute('aria-expanded', String(isOpen));
    root.classList.toggle('open', isOpen);
  };
  setOpen(false);
  open.addEventListener('click', () => setOpen(!root.classList.contains('open')));

  const reset = () => {
    direction.set(home.direction);
    speed.set(home.speed);
    height.set(home.height);
    power.set(home.power);
    fault.set('');
  };
  asPrinted.addEventListener('click', () => {
    reset();
    onChange();
  });

  let timer: ReturnType<typeof setTimeout> | undefined;
  return {
    root,
    reset,
    fault: fault.value,
    setting: () => {
      const [from, strength, start] = [direction.value(), speed.value(), height.value()];
      if (from === undefined) return { wrong: rangeWords(dials.direction) };
      if (strength === undefined) return { wrong: rangeWords(dials.speed) };
      if (start === undefined) return { wrong: rangeWords(dials.height) };
      return { direction: from, speed: strength, height: start, power: power.value() };
    },
    show: (state) => {
      root.classList.toggle('moved', state.moved);
      headline.replaceChildren(element('strong', '', state.headline));
      detail.replaceChildren(setWords(state.detail), ...faultLink(state));
      const list = cautionList(state);
      cautions.replaceChildren(...list);
      clearTimeout(timer);
      const words = [
        state.headline,
        detail.textContent,
        ...list.map(({ textContent }) => textContent ?? ''),
      ].join(' ');
      timer = setTimeout(() => {
        if (spoken.textContent !== words) spoken.textContent = words;
      }, quiet);
    },
  };
}

function rangeWords({ label, unit, least, most }: Dial): string {
  return `${label}: a number from ${least} to ${most} ${unit}.`;
}

function faultLink({ fault }: BarState): (HTMLElement | string)[] {
  if (!fault) return [];
  const link = element('a', '', 'See it');
  link.href = `#${fault.id}`;
  return [` ${fault.words} `, link];
}

function cautionList({ cautions, refused }: BarState): HTMLElement[] {
  if (refused && cautions.length === 0) return [];
  if (cautions.length === 0) return [element('p', '', 'No caution of this flight beyond the standing ones.')];
  const count =
    cautions.length === 1 ? '1 caution of this flight' : `${cautions.length} cautions of this flight`;
  const items = cautions.map(({ sentence, source }) =>
    element('li', '', setWords(`${sentence} `), element('span', 'study-from', setWords(`Limit: ${source}`))),
  );
  return [element('p', '', element('strong', '', count)), element('ul', '', ...items)];
}

function powerControl(home: Power, onChange: () => void) {
  const names: readonly (readonly [Power, string])[] = [
    ['idle', 'idling'],
    ['stopped', 'stopped'],
  ];
  const choices = names.map(([power, name]) => {
    const radio = element('input', '');
    radio.type = 'radio';
    radio.name = 'study-power';
    radio.value = power;
    radio.checked = power === home;
    radio.addEventListener('change', onChange);
    return { power, radio, label: element('label', '', radio, ` ${name}`) };
  });
  const root = element(
    'fieldset',
    'study-power',
    element('legend', '', 'Engine'),
    ...choices.map(({ label }) => label),
  );
  return {
    root,
    value: () => choices.find(({ radio }) => radio.checked)?.power ?? home,
    set: (value: Power) => {
      for (const { power, radio } of choices) radio.checked = power === value;
    },
  };
}

function faultControl(faults: BarInput['faults'], onChange: () => void) {
  const select = element('select', '', new Option('none', ''));
  select.id = 'study-fault';
  for (const [file, { name, faults: rows }] of faults) {
    const group = element('optgroup', '');
    group.label = name.trim().replace(/\.$/, '');
    group.append(...rows.map(({ id, fault }) => new Option(fault, `${file}/${id}`)));
    select.append(group);
  }
  select.addEventListener('change', onChange);
  const label = element('label', 'study-label', 'Fault flown over it');
  label.htmlFor = select.id;
  const root = element('div', 'study-faults', label, select);
  root.hidden = faults.length === 0;
  return {
    root,
    value: () => select.value,
    set: (value: string) => {
      select.value = value;
    },
  };
}

function button(words: string): HTMLButtonElement {
  const made = element('button', '', words);
  made.type = 'button';
  return made;
}
