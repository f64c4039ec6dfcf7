import type { Power } from '../../flight/terms/aircraft.ts';
import { element } from './page-nodes.ts';
import type { StudyEvent } from './study-state.ts';

const names: readonly (readonly [Power, string])[] = [
  ['idle', 'idling'],
  ['stopped', 'stopped'],
];

export function powerControl(send: (event: StudyEvent) => void) {
  const choices = names.map(([power, name]) => {
    const radio = element('input', '');
    radio.type = 'radio';
    radio.name = 'study-power';
    radio.value = power;
    radio.addEventListener('change', () => send({ kind: 'moved', to: { power } }));
    return { power, radio, label: element('label', '', radio, ` ${name}`) };
  });
  return {
    root: element(
      'fieldset',
      'study-power',
      element('legend', '', 'Engine'),
      ...choices.map(({ label }) => label),
    ),
    show: (value: Power) => {
      for (const { power, radio } of choices) radio.checked = power === value;
    },
  };
}
