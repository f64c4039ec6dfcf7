import { fileURLToPath } from 'node:url';
import { registerWindow, SVG, type Svg } from '@svgdotjs/svg.js';
import { toHtml } from 'hast-util-to-html';
import { createSVGWindow } from 'svgdom';
import { VFile } from 'vfile';
import type { DrawingBoard } from '../src/drawing/kit/drawing.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import type { Plan, PlanRequest } from '../src/flight/terms/plan.ts';
import { parseLesson } from '../src/lesson/parse-lesson.ts';
import { renderLesson } from '../src/lesson/render-lesson.ts';
import { readSchool } from '../src/school/read.ts';
import type { PageUnits } from '../src/words/figures/page-units.ts';
import type { Edition, PacketContext } from './context.ts';
import { components } from './list.ts';

// For this room's tests: the demonstration school, a plan really flown, and a lesson rendered from it.

const { value: school } = await readSchool(fileURLToPath(new URL('../lessons', import.meta.url)));
if (!school) throw new Error('The demonstration school does not read; its own tests say why');

const aircraft = school.fleet.get('osier-15')!;
const airfield = school.airfields.get('fallow-reach')!;

const window = createSVGWindow();
/** Texts are measured roughly: how a drawing is laid out is tested in the drawing room. */
const board: DrawingBoard = {
  createSvg: () => {
    registerWindow(window, window.document);
    return SVG(window.document.createElementNS('http://www.w3.org/2000/svg', 'svg')) as Svg;
  },
  measure: (text, size) => 0.55 * size * text.length,
};

export const feetAndKnots: PageUnits = { height: 'ft', distance: 'm', speed: 'kt' };

export const degrees = (value: number) => (value * Math.PI) / 180;
export const knots = (value: number) => (value * 1852) / 3600;

/** Osier 15 at Fallow Reach, runway 24 (238 degrees, left-hand), 180, idle, wind from 270 degrees at 10 kt. */
export function flyTrial(changes: Partial<PlanRequest> = {}): Plan {
  const request = { ...usual, ...changes };
  const plan = planApproach(request);
  requests.set(plan, request);
  return plan;
}

const usual: PlanRequest = {
  aircraft,
  airfield,
  runway: airfield.runways.find(({ name }) => name === '24')!,
  approach: '180',
  power: 'idle',
  wind: { from: degrees(270), speed: knots(10) },
};
/** What each plan was flown for; one that a test made by changing another counts as flown for the usual request. */
const requests = new WeakMap<Plan, PlanRequest>();

export function contextOf(
  plan: Plan,
  units: PageUnits = feetAndKnots,
  edition: Edition = 'student',
): PacketContext {
  const request = requests.get(plan) ?? usual;
  return { plan, request, school: school!, units, edition, board, drawingRoom: { width: 174, height: 200 } };
}

export interface TrialPage {
  readonly html: string;
  /** `line:column reason`. */
  readonly messages: readonly string[];
}

/** A lesson body (from its line 4 on) rendered for a plan; no-break spaces are written as spaces. */
export function renderBody(
  body: string,
  plan: Plan,
  units: PageUnits = feetAndKnots,
  edition: Edition = 'student',
): TrialPage {
  const file = new VFile({ path: 'trial.md', value: `---\ntitle: Trial\n---\n${body}\n` });
  const lesson = parseLesson(file, components);
  const tree = renderLesson(lesson, contextOf(plan, units, edition), file);
  const html = toHtml(tree).replaceAll('\u00a0', ' ').trim();
  return { html, messages: file.messages.map(({ line, column, reason }) => `${line}:${column} ${reason}`) };
}

/** The text that `:name[…]` in a sentence becomes; fails where there is a message. */
export function sayIn(directive: string, plan: Plan, units: PageUnits = feetAndKnots): string {
  const { html, messages } = renderBody(directive, plan, units);
  if (messages.length > 0) throw new Error(messages.join('\n'));
  return html.replace(/^<p>|<\/p>$/g, '');
}
