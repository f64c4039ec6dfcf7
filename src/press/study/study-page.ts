import type { PacketContext } from '../../../components/context.ts';
import type { DrawingBoard } from '../../drawing/kit/drawing.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { dayAsked } from '../packet/day-asked.ts';
import { gradeBands, screenBand } from '../packet/grade-bands.ts';
import { packetCautions } from '../packet/packet-cautions.ts';
import { subjectLine } from '../packet/setting.ts';
import { settingList } from '../packet/sheet-parts.ts';
import { type Flown, flySetting } from './fly-setting.ts';
import { keepInSight } from './keep-in-sight.ts';
import { LivePart, type Made, makeAgain, partOf } from './live-part.ts';
import { element, pageElements, setWords } from './page-nodes.ts';
import { plainReason } from './plain-reason.ts';
import { removeTags, tagPrinted } from './printed-tags.ts';
import { settingWords } from './setting-words.ts';
import { barState, faultPanelId, type Shown } from './shown.ts';
import { studyBar } from './study-bar.ts';
import { contextMaker } from './study-context.ts';
import type { StudyData, StudyUse } from './study-data.ts';
import { openExercises } from './study-exercises.ts';
import { faultEnd, faultNamed, faultPanel, flyableFaults } from './study-fault.ts';
import { canMoveWind, dialsOf, isSame, printedSetting, requestFor, type Setting } from './study-setting.ts';
import { studyCss } from './study-style.ts';
import { taskQueue } from './task-queue.ts';

interface LiveUse {
  readonly use: StudyUse;
  readonly part: LivePart;
}

/** Drawings that a fault is flown over; the page makes the first two where the lesson has them not. */
const faultDrawings = new Set(['pattern', 'profile', 'round-out']);
const madeForFaults = ['pattern', 'profile'];

/** Puts the bar into the page and lets it move the figures. Nothing is changed where the printed flight cannot be flown here. */
export function openStudyPage(data: StudyData, board: DrawingBoard): void {
  const { school, request, rules, day } = data;
  const { units } = school;
  const printedFlight = flySetting(request, units, true);
  if (!printedFlight.given) return;
  const printed = { request, plan: printedFlight.plan };
  const contextOf = contextMaker(data, board);
  const printedContext = () => contextOf(request, printed.plan);
  const dials = dialsOf(printed, units);
  const home = printedSetting(dials, request);

  const uses = data.uses.filter(({ name }) => name !== 'exercises');
  const live = uses.flatMap((use): LiveUse[] => {
    const part = partOf(use);
    return part ? [{ use, part }] : [];
  });
  const heads = ['.masthead .setting', '.packet-cautions'].map(
    (place) => new LivePart([...document.querySelectorAll(place)]),
  );
  const bands = '.page-band, .grade-band';
  const printedBands = [...document.querySelectorAll(bands)];
  const title = document.title;
  const queue = taskQueue();
  let shown: Shown = { setting: home, request, flown: printedFlight, isPrinted: true, fault: '' };
  let asked = 0;

  const bar = studyBar({
    dials,
    home,
    faults: flyableFaults(school.faults, printed.plan.aircraft.class),
    windMoves: canMoveWind(request),
    onChange: () => {
      cancelAnimationFrame(asked);
      asked = requestAnimationFrame(() => apply(bar.setting(), bar.fault()));
    },
  });
  const style = element('style', '', studyCss);
  document.head.append(style);
  document.body.prepend(bar.root);
  keepInSight(bar.root);
  if (data.edition === 'student') {
    for (const use of data.uses) if (use.name === 'exercises') openExercises(use, printedContext);
  }
  bar.show(barState(shown, printed.plan, units));
  // Paper is the packet's own, whatever stands on the screen.
  window.addEventListener('beforeprint', () => display({ ...shown, isPrinted: true, fault: '' }));
  window.addEventListener('afterprint', () => display(shown));

  function apply(setting: Setting | { readonly wrong: string }, fault: string): void {
    if ('wrong' in setting) {
      const flown: Flown = { given: false, plan: undefined, why: setting.wrong };
      shown = { ...shown, isPrinted: false, fault: '', flown };
    } else {
      const isPrinted = isSame(setting, home);
      const wanted = isPrinted ? request : requestFor(setting, request, dials, units);
      shown = {
        setting,
        request: wanted,
        flown: isPrinted ? printedFlight : flySetting(wanted, units),
        isPrinted,
        fault,
      };
    }
    bar.show(barState(shown, printed.plan, units));
    display(shown);
  }

  /** Brings the whole page to what is to be shown; drawings follow, one a turn, the nearest first. */
  function display(next: Shown): void {
    queue.clear();
    removeFaultPanel();
    displayHeads(next);
    document.body.classList.toggle('set-here', !next.isPrinted);
    if (next.isPrinted) removeTags();
    else tagPrinted(`As printed, for ${settingWords(printed.plan, units)}`);
    const { plan } = next.flown;
    const context = plan && contextOf(next.request, plan);
    const later: LiveUse[] = [];
    for (const { use, part } of live) {
      const withFault = next.fault !== '' && faultDrawings.has(use.name);
      if (next.isPrinted && !withFault) part.restore();
      else if (!next.flown.given || !context) part.show([refusal(use, next.flown)]);
      else if (part.isDrawing) {
        part.wait();
        later.push({ use, part });
      } else part.show(elements(use, makeAgain(use, context)));
    }
    if (!context || !next.flown.given) return;
    later.sort((one, other) => one.part.distance - other.part.distance);
    for (const { use, part } of later) queue.add(() => part.show(drawn(use, context, next.fault)));
    if (next.fault !== '') queue.add(() => showFaultPanel(next.fault, context));
  }

  function displayHeads({ flown, isPrinted }: Shown): void {
    const [setting, cautions] = heads as [LivePart, LivePart];
    displayBands(isPrinted ? printedBands : bandsOf(flown.plan));
    document.querySelector('.study-moved')?.remove();
    document.title = title;
    if (isPrinted) {
      for (const head of heads) head.restore();
      return;
    }
    const printedWords = `The printed packet is for ${settingWords(printed.plan, units)}; the words around the figures stay as they were written for it. Beside what was made for this setting stands a line, beside what stays as printed a dashed one.`;
    const { plan } = flown;
    if (!plan) {
      const why = flown.given ? '' : flown.why;
      setting.show([
        element('p', 'study-refusal', `There is no flight of this setting. ${why} ${printedWords}`),
      ]);
      const standing = pageElements([
        packetCautions(
          { ...printed.plan, cautions: [] },
          units,
          school.cautions,
          rules,
          day && { ...dayAsked(printed.plan, day, units), breaches: [] },
        ),
      ]);
      standing[0]?.append(
        element('p', 'study-refusal', 'There is no flight of this setting, and so no caution of it.'),
      );
      cautions.show(standing);
      return;
    }
    setting.show(pageElements([settingList(plan, units)]));
    setting.place?.before(
      element('p', 'study-moved', `Set on this page: ${settingWords(plan, units)}. ${printedWords}`),
    );
    cautions.show(
      pageElements([packetCautions(plan, units, school.cautions, rules, day && dayAsked(plan, day, units))]),
    );
    document.title = `${title.split(' — ')[0]} — ${subjectLine(plan, units)}, set on this page`;
  }

  /** Above the title, in place of those that stand there. */
  function displayBands(next: readonly Element[]): void {
    for (const each of document.querySelectorAll(bands)) each.remove();
    document.querySelector('.masthead')?.before(...next);
  }

  function bandsOf(plan: Plan | undefined): Element[] {
    return plan ? pageElements([...screenBand(plan, units), ...gradeBands(plan, units)]) : [];
  }

  /** With the fault in place of those that the author drew; where it is not of this drawing, the plan without. */
  function drawn(use: StudyUse, context: PacketContext, fault: string): Element[] {
    if (fault === '' || !faultDrawings.has(use.name)) return elements(use, makeAgain(use, context));
    const made = makeAgain(use, context, { faults: [fault] });
    if (made.elements) return made.elements;
    const plain = elements(use, makeAgain(use, context, { faults: undefined }));
    const why = reason(made.why);
    plain[0]?.prepend(element('p', 'study-refusal', `The fault is not drawn here. ${why}`));
    return plain;
  }

  function elements(use: StudyUse, made: Made): Element[] {
    return made.elements ?? [refusal(use, { given: false, plan: undefined, why: reason(made.why) })];
  }

  function reason(why: string): string {
    return plainReason(why, (id) =>
      faultNamed(school.faults, id, printed.plan.aircraft.class)?.fault.toLowerCase(),
    );
  }

  function showFaultPanel(fault: string, context: PacketContext): void {
    const row = faultNamed(school.faults, fault, printed.plan.aircraft.class);
    if (!row) return;
    const panel = faultPanel(row, context);
    panel.id = faultPanelId;
    panel.setAttribute('aria-label', 'Fault flown');
    const over = live.filter(({ use }) => faultDrawings.has(use.name));
    const place = over[0]?.part.place;
    // A lesson that draws no pattern, or no profile, gets it here.
    for (const name of madeForFaults) {
      if (over.some(({ use }) => use.name === name)) continue;
      const use: StudyUse = { n: -1, name, form: 'leaf', attributes: {}, label: '', ordinal: 99 };
      const made = drawn(use, context, fault);
      for (const number of made.flatMap((each) => [...each.querySelectorAll('.caption-number:empty')])) {
        number.textContent = 'On this page only:';
      }
      panel.append(...made);
    }
    if (place) place.before(panel);
    else document.querySelector('main > .lesson')?.append(panel);
    bar.show(barState(shown, printed.plan, units, faultEnd(row, fault, context)));
  }

  function removeFaultPanel(): void {
    document.getElementById(faultPanelId)?.remove();
  }
}

function refusal({ form }: StudyUse, flown: Flown): Element {
  const why = flown.given ? '' : flown.why;
  if (form === 'text') return element('span', 'study-refusal', 'no figure in this setting');
  return element('p', 'study-refusal', setWords(`Not made in this setting. ${why}`));
}
