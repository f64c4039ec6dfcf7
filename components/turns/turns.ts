import type { Element } from 'hast';
import { h } from 'hastscript';
import { z } from 'zod';
import { turnsDrawing } from '../../src/drawing/turns/turns.ts';
import { indicatedSpeed } from '../../src/flight/aircraft/calibration.ts';
import { type FlownTurn, turnFigures } from '../../src/flight/questions/turn-figures.ts';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { formatAngle } from '../../src/units/angle-text.ts';
import { numberText } from '../../src/units/rounding.ts';
import { formatDistance, formatHeight, formatSpeed, formatTime } from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { formatMargin, formatMostAngle } from '../../src/words/figures/safe-rounding.ts';
import type { PacketContext } from '../context.ts';
import { drawingId, figure } from '../figure.ts';
import { banks } from './banks.ts';

const usualBanks = '20deg 30deg 45deg';
const attributes = z.strictObject({
  banks: banks(usualBanks).describe('The banks to draw, up to five').prefault(usualBanks),
});

/** A turn at a bank; half a turn and a whole one differ in height and time alone. */
interface Turn {
  readonly bank: number;
  readonly loadFactor: number;
  /** m/s EAS. */
  readonly stallSpeed: number;
  readonly half: FlownTurn;
  readonly whole: FlownTurn;
}

export const turns = defineComponent<PacketContext, typeof attributes>({
  name: 'turns',
  form: 'leaf',
  onScreen: 'made-again',
  summary:
    'What a gliding turn takes at each of some banks, at the best-glide speed in still air: circles to scale, and a ' +
    'table of radius, height lost, time, stall speed and the margin over it.',
  attributes,
  example: '::turns{banks="20deg 30deg 45deg"}',
  render: ({ ordinal, attributes: { banks: asked }, context: { plan, units, board, drawingRoom } }) => {
    const flown = asked.flatMap((bank) => turnAt(plan, bank) ?? []);
    const left = asked.filter((bank) => !flown.some((turn) => turn.bank === bank));
    if (flown.length === 0) {
      throw new DirectiveError(
        `${plan.aircraft.name} is not turned at any of these banks (at most ${formatMostAngle(plan.aircraft.turns.limit)}, and not stalled): write smaller ones`,
      );
    }
    const source = sourceOf(plan, left);
    const drawing = turnsDrawing(
      flown.map(({ bank, half, whole }) => ({
        bank,
        radius: whole.radius,
        heightLost: { half: half.heightLost, whole: whole.heightLost },
      })),
      {
        units,
        board,
        id: drawingId('turns', ordinal),
        aircraft: plan.aircraft.name,
        note: noteOf(plan, units),
        maxWidth: drawingRoom.width,
        maxHeight: drawingRoom.height * 0.75,
      },
    );
    const caption = `Turning circles of ${plan.aircraft.name} in a glide, still air, scale 1:${numberText(drawing.scale, 1)}.`;
    return [
      figure({ name: 'turns', ordinal, drawing, caption, source }),
      table(flown, plan, units, ordinal),
      h('p', { className: ['source'] }, source),
    ];
  },
});

/** Undefined for a bank over the aircraft's limit, or one in which it stalls at the best-glide speed. */
function turnAt(plan: Plan, bank: number): Turn | undefined {
  if (bank > plan.aircraft.turns.limit + 1e-9) return undefined;
  const half = turnFigures(plan, bank, Math.PI);
  const whole = turnFigures(plan, bank, 2 * Math.PI);
  if (!half.flown || !whole.flown) return undefined;
  const { loadFactor, stallSpeed } = whole;
  return { bank, loadFactor, stallSpeed, half: half.flown, whole: whole.flown };
}

function noteOf(plan: Plan, units: PageUnits): string {
  const speed = formatSpeed(indicatedSpeed(plan.flown.glideSpeed, plan.aircraft), units);
  const height = formatHeight(plan.flown.keyHeight, units);
  return `In still air at ${speed}, the best-glide speed wings level, ${height} above the field, the bank held throughout.`;
}

/** The margin over the stall below which the core gives a caution (`stall-margin`). */
const leastMargin = 1.3;

function table(flown: readonly Turn[], plan: Plan, units: PageUnits, ordinal: number): Element {
  const number = { className: ['number'] };
  const columns: readonly (readonly [string, (turn: Turn) => string])[] = [
    ['Load factor', ({ loadFactor }) => numberText(loadFactor, 0.01)],
    ['Radius', ({ whole }) => formatDistance(whole.radius, units)],
    ['Height lost in 180°', ({ half }) => formatHeight(half.heightLost, units)],
    ['Time', ({ half }) => formatTime(half.time)],
    ['Height lost in 360°', ({ whole }) => formatHeight(whole.heightLost, units)],
    ['Time', ({ whole }) => formatTime(whole.time)],
    ['Stall speed', ({ stallSpeed }) => formatSpeed(indicatedSpeed(stallSpeed, plan.aircraft), units)],
    ['Glide speed over stall speed', (turn) => marginWords(plan, turn)],
  ];
  const head = [
    h('th', { scope: 'col' }, 'Bank'),
    // A head may take several lines; otherwise the page would grow too wide for its paper.
    ...columns.map(([text]) => h('th', { scope: 'col', ...number, style: 'white-space:normal' }, text)),
  ];
  const rows = flown.map((turn) =>
    h('tr', [
      h('th', { scope: 'row' }, formatAngle(turn.bank)),
      ...columns.map(([, cell]) => h('td', number, cell(turn))),
    ]),
  );
  const speed = formatSpeed(indicatedSpeed(plan.flown.glideSpeed, plan.aircraft), units);
  const caption = ` What a turn takes of ${plan.aircraft.name} in a glide at ${speed}, in still air; the last column is rounded down.`;
  return h('table', { className: ['turns'], id: `turns-${ordinal}-table` }, [
    h('caption', [captionNumber('Table'), caption]),
    h('thead', [h('tr', head)]),
    h('tbody', rows),
  ]);
}

/** Rounded down: 1.29 must not read 1.3. */
function marginWords({ flown }: Plan, { stallSpeed }: Turn): string {
  const margin = flown.glideSpeed / stallSpeed;
  const text = formatMargin(margin);
  return margin < leastMargin ? `${text}, under ${numberText(leastMargin, 0.1)}` : text;
}

function sourceOf(plan: Plan, left: readonly number[]): string {
  const engine = plan.power === 'idle' ? 'engine idling' : 'engine stopped';
  const source = plan.aircraft.source.trim().replace(/\.$/, '');
  const out =
    left.length === 0
      ? ''
      : ` Left out, being over its limit or stalled at that speed: ${left.map(formatAngle).join(', ')}.`;
  return `Computed for ${plan.aircraft.name}, still air, ${engine}.${out} Source of the aircraft's figures: ${source}.`;
}
