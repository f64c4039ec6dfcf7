import type { PacketContext } from '../../../components/context.ts';
import type { Flown } from './fly-setting.ts';
import { type Made, makeAgain } from './make-again.ts';
import { element, setWords } from './page-nodes.ts';
import { plainReason } from './plain-reason.ts';
import { componentOf } from './study-components.ts';
import type { StudyUse } from './study-data.ts';
import { faultNamed } from './study-fault.ts';
import type { StudyPacket } from './study-packet.ts';

/** True for a drawing that a fault is flown over. */
export function takesFault(use: StudyUse): boolean {
  return componentOf(use).drawsFaults !== undefined;
}

/** A use made again for a setting, as elements; where it cannot be made, the words that say why. */
export function usesMaker({ school, plan }: StudyPacket) {
  const reason = (why: string) =>
    plainReason(why, (id) => faultNamed(school.faults, id, plan.aircraft.class)?.fault.toLowerCase());
  const elements = (use: StudyUse, { elements: made, why }: Made) => made ?? [refusal(use, reason(why))];
  return {
    /**
     * With the fault in place of those that the author drew; where it does not belong in this drawing, the plan
     * without it.
     */
    make: (use: StudyUse, context: PacketContext, fault: string): Element[] => {
      if (fault === '' || !takesFault(use)) return elements(use, makeAgain(use, context));
      const made = makeAgain(use, context, { faults: [fault] });
      if (made.elements) return made.elements;
      const plain = elements(use, makeAgain(use, context, { faults: undefined }));
      const why = reason(made.why);
      plain[0]?.prepend(element('p', 'study-refusal', `The fault is not drawn here. ${why}`));
      return plain;
    },
    refuse: (use: StudyUse, flown: Flown): Element[] => [refusal(use, flown.given ? '' : flown.why)],
  };
}

function refusal({ form }: StudyUse, why: string): Element {
  if (form === 'text') return element('span', 'study-refusal', 'no figure in this setting');
  return element('p', 'study-refusal', setWords(`Not made in this setting. ${why}`));
}
