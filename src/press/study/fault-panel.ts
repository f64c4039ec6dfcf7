import type { PacketContext } from '../../../components/context.ts';
import type { Fault } from '../../school/faults.ts';
import { element, setWords } from './page-nodes.ts';
import { faultEffect } from './study-fault.ts';

export const faultPanelId = 'study-fault-flown';

/** How the fault was flown, with what the school says about it. */
export function faultPanel(row: Fault, context: PacketContext): HTMLElement {
  const line = (lead: string, text: string) =>
    element('p', '', element('strong', '', `${lead} `), setWords(text));
  const panel = element(
    'section',
    'study-fault',
    element(
      'p',
      '',
      element('strong', '', `Fault flown: ${row.fault}`),
      ` (${row.fly?.written.replace(/-(?=\d)/g, '−') ?? ''})`,
    ),
    element('p', 'study-effect', setWords(faultEffect(row, context))),
    line('What is seen:', row.sign),
    line('Recovery:', row.recovery),
  );
  panel.id = faultPanelId;
  panel.setAttribute('aria-label', 'Fault flown');
  return panel;
}
