import { h } from 'hastscript';
import { z } from 'zod';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
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
  summary: "A checklist of the aircraft's own file, in the order of its file, with boxes to tick.",
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
        h(
          'p',
          { className: ['source'] },
          `In the order of the aircraft's own handbook as given in its file; the handbook itself prevails. Source: ${source.trim().replace(/\.$/, '')}.`,
        ),
      ]),
    ];
  },
});

/** @throws DirectiveError where the aircraft's file has no such list. */
export function checklistLines(context: PacketContext, from: keyof typeof lists): readonly string[] {
  const own = ownFile(context);
  const lines = own?.file.engineFailure;
  if (lines && lines.length > 0) return lines;
  const place = own ? `\`fleet/${own.id}.yaml\`` : "the aircraft's file";
  throw new DirectiveError(
    `The ${context.plan.aircraft.name} has no checklist \`${from}\`: add the key \`${from}\` to ${place}, a list of its lines in the order of the aircraft's own handbook`,
  );
}
