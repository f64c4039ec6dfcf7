import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { type GradedLine, gradedLines } from '../../words/card/card-words.ts';
import { finalLine } from '../../words/card/final-line.ts';
import type { StoppedEngine } from '../../words/card/stopped-engine.ts';
import { lowerFirst } from '../../words/figures/letter-case.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';

/** Limits of good practice that the flight passes, in a band above everything; no card is made of anything graver. */
export function cardBand(plan: Plan, units: PageUnits): Element[] {
  return gradedLines(plan, units)
    .filter(({ grade }) => grade !== 'worth-knowing')
    .map((line) => h('p', { class: 'band' }, words(line)));
}

/** What is unusual about the flight, and the height by which the turn to final is complete. */
export function cardFinal(plan: Plan, request: PlanRequest, units: PageUnits): Element {
  const { by, or } = finalLine(request, units);
  return h('div', { class: 'final' }, [
    h('p', [h('b', by), `, ${or}.`]),
    ...gradedLines(plan, units)
      .filter(({ grade }) => grade === 'worth-knowing')
      .map((line) => h('p', words(line))),
  ]);
}

/** What has to be said about the flight without the engine, where that is not the one the card is for. */
export function cardStopped(plan: Plan, stopped: StoppedEngine, units: PageUnits): Element[] {
  if (stopped.plan === undefined) {
    return [h('p', { class: 'beware' }, [h('b', 'Stopped:'), ` ${stopped.why}`])];
  }
  if (stopped.plan === plan) return [];
  const lines = gradedLines(stopped.plan, units);
  if (lines.length === 0) return [];
  const said = lines.map(({ name, words: of }) => `${lowerFirst(name)}: ${of}`).join('; ');
  const isBeyond = lines.some(({ grade }) => grade !== 'worth-knowing');
  return [h('p', { class: isBeyond ? 'beware' : 'knowing' }, [h('b', 'Stopped,'), ` ${said}.`])];
}

function words({ name, words: said }: GradedLine): (Element | string)[] {
  return [h('b', `${name}:`), ` ${said}.`];
}
