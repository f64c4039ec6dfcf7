import type { Element } from 'hast';
import { h } from 'hastscript';
import { qnhOf } from '../../flight/air/air.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { stoppedEngine } from '../../words/card/stopped-engine.ts';
import { formatMass, formatPressure, formatTemperature } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { setText } from '../formats/document-tree.ts';
import type { PageDocument } from '../formats/page-document.ts';
import { subjectLine } from '../packet/setting.ts';
import { cardBand, cardFinal, cardStopped } from './card-cautions.ts';
import { cardFailure } from './card-failure.ts';
import { cardHead } from './card-head.ts';
import { cardKeys } from './card-keys.ts';
import type { CardPaper } from './card-paper.ts';
import { type CardSetting, cardCss } from './card-style.ts';
import { cardTurns } from './card-turns.ts';
import { cardWinds } from './card-winds.ts';

/** What one card is made from. */
export interface CardInput {
  /** Makes the spot, with nothing in it that is not to be flown. */
  readonly plan: Plan;
  readonly request: PlanRequest;
  /** The engine-failure list of the aircraft's file; empty where it has none. */
  readonly engineFailure: readonly string[];
  readonly school: string;
  readonly units: PageUnits;
  readonly paper: CardPaper;
  /** The date of the inputs. */
  readonly date: Date;
  readonly fingerprint: string;
}

/** The card as a tree, for any size of type: the flights behind it are flown only once. */
export function cardBody(input: CardInput): Element {
  const { plan, request, engineFailure, units } = input;
  const stopped = stoppedEngine(plan, request, units);
  const plans = stopped.plan && stopped.plan !== plan ? [plan, stopped.plan] : [plan];
  const body = h('body', [
    ...cardBand(plan, units),
    cardHead(plan, units),
    h('main', [
      cardKeys(plans, units),
      cardFinal(plan, request, units),
      ...cardStopped(plan, stopped, units),
      cardFailure(engineFailure, stopped.plan !== undefined),
      cardWinds(plan, request, units),
      cardTurns(plan, units),
    ]),
    foot(input),
  ]);
  setText(body.children);
  return body;
}

/** The whole document, in this setting. */
export function cardDocument(
  body: Element,
  { plan, units, paper, date }: CardInput,
  setting: CardSetting,
): PageDocument {
  return { title: `Card — ${subjectLine(plan, units)}`, css: cardCss(paper, setting), body, paper, date };
}

function foot({ plan, school, date, fingerprint }: CardInput): Element {
  const { aircraft, airfield, flown, air } = plan;
  const sources = [firstSentence(aircraft.source), firstSentence(airfield.source)];
  const from =
    sources[0] === sources[1] ? `Data: ${sources[0]}` : `Aircraft: ${sources[0]} Airfield: ${sources[1]}`;
  return h('footer', [
    h('p', [
      h('b', 'Training material; it does not replace instruction.'),
      " The aircraft's handbook, local rules and the instructor's judgement prevail. For this runway, " +
        `wind and air alone (${formatMass(flown.mass)}, ${formatTemperature(air.temperature)}, QNH ${formatPressure(qnhOf(air))}). ` +
        `From, to: the spot is still made, the turn to final complete in time. ${from} ` +
        `${school} · ${date.toISOString().slice(0, 10)} · inputs ${fingerprint}`,
    ]),
  ]);
}

/** Enough about where figures come from: the packet has the rest. */
function firstSentence(source: string): string {
  const text = source.trim();
  const first = /^.*?[.!?](?=\s|$)/s.exec(text)?.[0] ?? text;
  return /[.!?]$/.test(first) ? first : `${first}.`;
}
