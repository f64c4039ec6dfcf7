import type { FaultsFile } from '../../school/faults.ts';
import { element } from './page-nodes.ts';
import type { StudyEvent } from './study-state.ts';

/** `faults`: by the ids of their files. Where there are none, nothing is shown. */
export function faultControl(
  faults: readonly (readonly [string, FaultsFile])[],
  send: (event: StudyEvent) => void,
) {
  const select = element('select', '', new Option('none', ''));
  select.id = 'study-fault';
  for (const [file, { name, faults: rows }] of faults) {
    const group = element('optgroup', '');
    group.label = name.trim().replace(/\.$/, '');
    group.append(...rows.map(({ id, fault }) => new Option(fault, `${file}/${id}`)));
    select.append(group);
  }
  select.addEventListener('change', () => send({ kind: 'fault-chosen', fault: select.value }));
  const label = element('label', 'study-label', 'Fault flown over it');
  label.htmlFor = select.id;
  const root = element('div', 'study-faults', label, select);
  root.hidden = faults.length === 0;
  return {
    root,
    show: (fault: string) => {
      select.value = fault;
    },
  };
}
