import { h } from 'hastscript';
import { z } from 'zod';
import { flownFault } from '../../src/flight/faults/flown-fault.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { nameList } from '../../src/lesson/directive-form.ts';
import { didYouMean } from '../../src/messages/nearest-name.ts';
import { isForClass } from '../../src/school/aircraft-classes.ts';
import type { Fault, FaultsFile } from '../../src/school/faults.ts';
import { effectWords } from '../../src/words/faults/effect-words.ts';
import type { PacketContext } from '../context.ts';
import { rowIds } from '../row-ids.ts';

const attributes = z.strictObject({
  from: z
    .string({ error: 'the name of a file in `faults/`, such as `from=power-off`' })
    .describe('The file of faults')
    .meta({ takes: 'the name of a file in `faults/`', sample: 'power-off' }),
  only: rowIds
    .refine((ids) => ids.length > 0, {
      error: 'write ids of rows, such as `only="glide-slow base-turn-late"`',
    })
    .describe('Only these rows; left out, all of them')
    .meta({ takes: 'ids of rows, a space between them', sample: 'glide-slow base-turn-late' })
    .optional(),
});

export const faults = defineComponent<PacketContext, typeof attributes>({
  name: 'faults',
  form: 'leaf',
  summary:
    "A table of common faults: what is seen, its cause, the recovery, how to prevent it, and what flying it came to; from a file in the school's " +
    '`faults/`, all rows or `only` some.',
  attributes,
  example: '::faults{from=power-off}',
  isFor: ({ attributes: { from, only }, context }) => {
    const rows = context.school.faults.get(from)?.faults ?? [];
    const asked = rows.filter(({ id }) => only?.includes(id) ?? true);
    return asked.length === 0 || !asked.every((row) => isPlanned(row, context));
  },
  render: ({ ordinal, attributes: { from, only }, context }) => {
    const { name, source, faults: all } = fileOf(from, context);
    const rows = pick(all, only, from).filter((row) => isFor(row, context) && !isPlanned(row, context));
    if (rows.length === 0) {
      throw new DirectiveError(
        `No row asked for from \`${from}\` is for a ${context.plan.aircraft.class} aircraft: put the directive into \`:::for{class=…}\`, or add such a row`,
      );
    }
    const heads = ['Fault', 'What is seen', 'Cause', 'Recovery', 'How to prevent it'];
    return [
      h('table', { className: ['faults'], id: `faults-${ordinal}` }, [
        h('caption', [
          captionNumber('Table'),
          ` ${name.trim().replace(/\.$/, '')}.`,
          ...(rows.some(({ fly }) => fly) ? [' ', flownNote] : []),
        ]),
        h('thead', [
          h(
            'tr',
            heads.map((head) => h('th', { scope: 'col' }, head)),
          ),
        ]),
        h(
          'tbody',
          rows.flatMap((row) => [
            h('tr', [
              h('th', { scope: 'row' }, row.fault),
              ...[row.sign, row.cause, row.recovery, row.prevent].map((text) => h('td', text)),
            ]),
            ...flownRow(row, context, heads.length),
          ]),
        ),
      ]),
      h('p', { className: ['source'] }, `Source: ${source.trim().replace(/\.$/, '')}.`),
    ];
  },
});

const flownNote =
  'Flown: this plan with that one thing changed, and a pilot who does not notice. Heights are above the spot.';

/** How the fault was flown, under its row. */
function flownRow({ fly }: Fault, { request, units }: PacketContext, columns: number) {
  if (!fly) return [];
  const words = effectWords(flownFault(fly.change, request), units);
  return [
    h('tr', { className: ['flown'] }, [
      h('td', { colSpan: columns }, [
        h('b', 'Flown'),
        ` (${fly.written.replace(/-(?=\d)/g, '−')}): ${words}`,
      ]),
    ]),
  ];
}

function fileOf(from: string, { school }: PacketContext): FaultsFile {
  const found = school.faults.get(from);
  if (found) return found;
  const ids = [...school.faults.keys()];
  const there = ids.length === 0 ? 'it has none yet' : `it has ${nameList(ids)}`;
  throw new DirectiveError(
    `The school has no file \`faults/${from}.yaml\`${didYouMean(from, ids)} (${there})`,
  );
}

/** In the order of the file, whatever order they were asked for in: it may be the order of urgency. */
function pick(all: readonly Fault[], only: readonly string[] | undefined, from: string): readonly Fault[] {
  if (!only) return all;
  const ids = all.map(({ id }) => id);
  const unknown = only.filter((id) => !ids.includes(id));
  if (unknown.length > 0) {
    const words = unknown.map((id) => `\`${id}\`${didYouMean(id, ids)}`).join('; ');
    throw new DirectiveError(`\`faults/${from}.yaml\` has no row ${words} It has ${nameList(ids)}`);
  }
  return all.filter(({ id }) => only.includes(id));
}

const isFor = (row: Fault, { plan }: PacketContext) => isForClass(row, plan.aircraft.class);

/** What the plan does anyway is not a fault of it. */
function isPlanned({ fly }: Fault, { request }: PacketContext): boolean {
  return fly?.change.kind === 'power-stopped' && request.power === 'stopped';
}
