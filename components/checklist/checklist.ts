import type { Element } from 'hast';
import { h } from 'hastscript';
import { z } from 'zod';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { gradedLines } from '../../src/words/card/card-words.ts';
import { baseTurnPlace, keyRows } from '../../src/words/card/key-rows.ts';
import { stoppedEngine } from '../../src/words/card/stopped-engine.ts';
import { formatWind } from '../../src/words/figures/format.ts';
import { lowerFirst } from '../../src/words/figures/letter-case.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { nameOf } from '../choice-of.ts';
import type { PacketContext } from '../context.ts';
import { ownFile } from '../own-file.ts';
import { tickBox } from '../tick-box.ts';

/** The checklists that an aircraft's file can hold. */
const lists = { 'engine-failure': 'Engine failure' } as const;

const attributes = z.strictObject({
  from: nameOf(lists).describe("The list of the aircraft's file").prefault('engine-failure'),
});

export const checklist = defineComponent<PacketContext, typeof attributes>({
  name: 'checklist',
  form: 'leaf',
  onScreen: 'unchanged',
  summary:
    "A checklist of the aircraft's own file, in the order of its file, with boxes to tick; on pages flown with the engine " +
    'idling, with the keys of the stopped engine.',
  attributes,
  example: '::checklist{from=engine-failure}',
  render: ({ attributes: { from }, context, ordinal }) => {
    const { name, source } = context.plan.aircraft;
    const id = `checklist-${ordinal}`;
    return [
      h('section', { className: ['checklist'], ariaLabelledBy: id, style: 'break-inside:avoid' }, [
        h('p', { id, className: ['checklist-title'] }, [h('strong', `${lists[from]}: ${name}`)]),
        h(
          'ol',
          checklistLines(context, from).map((line) => h('li', [tickBox(), ' ', line])),
        ),
        ...stoppedKeys(context),
        h(
          'p',
          { className: ['source'] },
          `In the order of the aircraft's own handbook as given in its file; the handbook itself prevails. Source: ${source.trim().replace(/\.$/, '')}.`,
        ),
      ]),
    ];
  },
});

/**
 * Where the pages are flown with the engine idling, their keys do not belong in a list of what to do without it: the
 * keys of the stopped engine go with the list, or the words that say why there are none.
 */
function stoppedKeys({ plan, request, units }: PacketContext): Element[] {
  if (plan.power === 'stopped') return [];
  const stopped = stoppedEngine(plan, request, units);
  const idling = 'Key heights flown with the engine idling are not for this list.';
  if (stopped.plan === undefined) {
    return [
      h('p', { className: ['stopped-keys'] }, [h('strong', 'Engine stopped: '), `${stopped.why} ${idling}`]),
    ];
  }
  const graded = gradedLines(stopped.plan, units).map(({ name, words }) => ` ${name}: ${words}.`);
  return [
    h('p', { className: ['stopped-keys'] }, [
      h('strong', 'Keys with the engine stopped'),
      `, ${conditionsOf(stopped.plan, units)}: ${keysInWords(stopped.plan, units)}.${graded.join('')} ${idling}`,
    ]),
  ];
}

function conditionsOf({ flown }: Plan, units: PageUnits): string {
  return `surface wind ${formatWind(flown.surfaceWind.from, flown.surfaceWind.speed, units)}`;
}

/** `downwind key 1,000 ft (750 ft to 1,410 ft), base turn 830 ft (430 m past abeam), …`. */
function keysInWords(plan: Plan, units: PageUnits): string {
  return keyRows(plan, units)
    .map(({ id, label, height, band }) => {
      const bandWords = band && ('none' in band ? band.none : `${band.low} to ${band.high}`);
      const beside = id === 'base-turn' ? baseTurnPlace(plan, units) : bandWords;
      return `${lowerFirst(label)} ${height}${beside === undefined ? '' : ` (${beside})`}`;
    })
    .join(', ');
}

/** @throws DirectiveError where the aircraft's file has no such list. */
function checklistLines(context: PacketContext, from: keyof typeof lists): readonly string[] {
  const own = ownFile(context);
  const lines = own?.file.engineFailure;
  if (lines && lines.length > 0) return lines;
  const place = own ? `\`fleet/${own.id}.yaml\`` : "the aircraft's file";
  throw new DirectiveError(
    `The ${context.plan.aircraft.name} has no checklist \`${from}\`: add the key \`${from}\` to ${place}, a list of its lines in the order of the aircraft's own handbook`,
  );
}
