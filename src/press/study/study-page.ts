import type { DrawingBoard } from '../../drawing/kit/drawing.ts';
import { barWords } from './bar-words.ts';
import { keepInSight } from './keep-in-sight.ts';
import { pageFigures } from './page-figures.ts';
import { pageHeads } from './page-heads.ts';
import { element } from './page-nodes.ts';
import { flightShower, isSameShown } from './shown.ts';
import { studyBar } from './study-bar.ts';
import { componentOf } from './study-components.ts';
import type { StudyData } from './study-data.ts';
import { openExercises } from './study-exercises.ts';
import { flyableFaults } from './study-fault.ts';
import { openPacket } from './study-packet.ts';
import { canMoveWind } from './study-setting.ts';
import { next, onPage, printedState, type StudyEvent } from './study-state.ts';
import { studyCss } from './study-style.ts';

/**
 * Puts the bar into the page and lets it move the figures: each event makes the next state, and the page is drawn from
 * that. Nothing is changed where the printed flight cannot be flown here.
 */
export function openStudyPage(data: StudyData, board: DrawingBoard): void {
  const packet = openPacket(data, board);
  if (!packet) return;
  const { request, plan, school, units, dials } = packet;
  const shownOf = flightShower(packet);
  let state = printedState(dials, packet.home);
  let shown = shownOf(state);
  let frame = 0;

  const bar = studyBar({
    dials,
    faults: flyableFaults(school.faults, plan.aircraft.class),
    windMoves: canMoveWind(request),
    send,
  });
  document.head.append(element('style', '', studyCss));
  document.body.prepend(bar.root);
  keepInSight(bar.root);
  if (data.edition === 'student') {
    const answered = data.uses.filter((use) => componentOf(use).onScreen === 'answered');
    for (const use of answered) openExercises(use, () => packet.contextOf(request, plan));
  }
  const showHeads = pageHeads(packet);
  const showFigures = pageFigures(packet, (fault, end) => send({ kind: 'fault-flown', fault, end }));
  bar.show(state);
  draw();
  window.addEventListener('beforeprint', () => send({ kind: 'print-begun' }));
  window.addEventListener('afterprint', () => send({ kind: 'print-ended' }));

  function send(event: StudyEvent): void {
    const before = state;
    state = next(before, event);
    if (state === before) return;
    bar.show(state);
    // A slider moves more often than its flight can be flown; paper does not wait for the screen's next frame.
    if (state.isPrinting !== before.isPrinting) draw();
    else frame ||= requestAnimationFrame(draw);
  }

  function draw(): void {
    cancelAnimationFrame(frame);
    frame = 0;
    bar.say(barWords(shownOf(state), plan, units, state.faultEnd));
    const wanted = shownOf(onPage(state));
    if (isSameShown(wanted, shown)) return;
    shown = wanted;
    showHeads(shown);
    showFigures(shown);
  }
}
