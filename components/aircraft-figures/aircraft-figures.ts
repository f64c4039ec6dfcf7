import { h } from 'hastscript';
import { z } from 'zod';
import { captionNumber } from '../../src/lesson/captions.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { formatMass } from '../../src/words/figures/format.ts';
import type { PacketContext } from '../context.ts';
import { otherRows, speedRows } from './figure-rows.ts';

export const aircraftFigures = defineComponent<PacketContext, z.ZodType>({
  name: 'aircraft-figures',
  form: 'leaf',
  onScreen: 'made-again',
  summary:
    "The aircraft's own figures with their source: speeds at both masses, glides, turns, round-out, limits.",
  attributes: z.strictObject({}),
  example: '::aircraft-figures',
  render: ({ ordinal, context: { plan, units } }) => {
    const { aircraft, flown } = plan;
    const number = { className: ['number'] };
    const masses = [
      `at ${formatMass(aircraft.mass.reference)}, as given`,
      `at ${formatMass(flown.mass)}, as flown`,
    ];
    const head = h('tr', [
      h('th', { scope: 'col' }, 'Figure'),
      ...masses.map((mass) => h('th', { scope: 'col', ...number }, mass)),
    ]);
    const body = [
      ...speedRows(plan, units).map(({ name, given, now }) =>
        h('tr', [h('th', { scope: 'row' }, name), h('td', number, given), h('td', number, now)]),
      ),
      ...otherRows(plan, units).map(({ name, value }) =>
        h('tr', [
          h('th', { scope: 'row' }, name),
          h('td', { colSpan: 2, ...number, style: 'white-space:normal' }, value),
        ]),
      ),
    ];
    const source = aircraft.source.trim().replace(/\.$/, '');
    return [
      h(
        'table',
        { className: ['aircraft-figures'], id: `aircraft-figures-${ordinal}`, style: 'break-inside:avoid' },
        [
          h('caption', [
            captionNumber('Table'),
            ` The figures of ${aircraft.name}. Speeds are what the airspeed indicator shows; glides are in still air, wings level.`,
          ]),
          h('thead', [head]),
          h('tbody', body),
        ],
      ),
      h('p', { className: ['source'] }, `Source of the aircraft's figures: ${source}.`),
    ];
  },
});
