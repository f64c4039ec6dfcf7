import type { PacketContext } from '../../../components/context.ts';
import { components } from '../../../components/list.ts';
import { faultPanel, faultPanelId } from './fault-panel.ts';
import { type LivePart, partOf } from './live-part.ts';
import { removeTags, tagPrinted } from './printed-tags.ts';
import { settingWords } from './setting-words.ts';
import type { Shown } from './shown.ts';
import { componentOf } from './study-components.ts';
import type { StudyUse } from './study-data.ts';
import { faultEnd, faultNamed } from './study-fault.ts';
import type { StudyPacket } from './study-packet.ts';
import { taskQueue } from './task-queue.ts';
import { takesFault, usesMaker } from './use-elements.ts';

interface LiveUse {
  readonly use: StudyUse;
  readonly part: LivePart;
}

/**
 * Brings the lesson to what is to be shown; drawings follow one at a time, the nearest first, and what came of the
 * fault comes last. `onFault` is told where it ends.
 */
export function pageFigures(
  packet: StudyPacket,
  onFault: (fault: string, end: string) => void,
): (shown: Shown) => void {
  const { school, plan: printed, units, contextOf } = packet;
  const live = packet.uses
    .filter((use) => componentOf(use).onScreen === 'made-again')
    .flatMap((use): LiveUse[] => {
      const part = partOf(use);
      return part ? [{ use, part }] : [];
    });
  const { make, refuse } = usesMaker(packet);
  const queue = taskQueue();

  return ({ request, flown, isPrinted, fault }) => {
    queue.clear();
    document.getElementById(faultPanelId)?.remove();
    document.body.classList.toggle('set-here', !isPrinted);
    if (isPrinted) removeTags();
    else tagPrinted(`As printed, for ${settingWords(printed, units)}`);
    const context = flown.given ? contextOf(request, flown.plan) : undefined;
    const later: LiveUse[] = [];
    for (const { use, part } of live) {
      if (isPrinted && (fault === '' || !takesFault(use))) part.restore();
      else if (!context) part.show(refuse(use, flown));
      else if (part.isDrawing) {
        part.wait();
        later.push({ use, part });
      } else part.show(make(use, context, fault));
    }
    if (!context) return;
    later.sort((one, other) => one.part.distance - other.part.distance);
    for (const { use, part } of later) queue.add(() => part.show(make(use, context, fault)));
    if (fault !== '') queue.add(() => showFault(fault, context));
  };

  function showFault(fault: string, context: PacketContext): void {
    const row = faultNamed(school.faults, fault, printed.aircraft.class);
    if (!row) return;
    const panel = faultPanel(row, context);
    const over = live.filter(({ use }) => takesFault(use));
    panel.append(...drawingsWithout(over).flatMap((use) => numbered(make(use, context, fault))));
    const place = over[0]?.part.place;
    if (place) place.before(panel);
    else document.querySelector('main > .lesson')?.append(panel);
    onFault(fault, faultEnd(row, fault, context));
  }
}

/** The drawings of any fault that the lesson does not have: they are made for the fault. */
function drawingsWithout(there: readonly LiveUse[]): StudyUse[] {
  return components
    .filter(({ drawsFaults, name }) => drawsFaults === 'any' && !there.some(({ use }) => use.name === name))
    .map(({ name, form }) => ({ n: -1, name, form, attributes: {}, label: '', ordinal: 99 }));
}

function numbered(made: Element[]): Element[] {
  for (const number of made.flatMap((each) => [...each.querySelectorAll('.caption-number:empty')])) {
    number.textContent = 'On this page only:';
  }
  return made;
}
