import { z } from 'zod';
import { qnhOf } from '../../src/flight/air.ts';
import type { FieldAir } from '../../src/flight/plan.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import {
  formatDensityAltitude,
  formatHeight,
  formatPressure,
  formatTemperature,
} from '../../src/units/format.ts';
import type { PageUnits } from '../../src/units/page-units.ts';
import { nameOf } from '../choice-of.ts';
import type { PacketContext } from '../context.ts';

type Figure = (air: FieldAir, units: PageUnits) => string;

const figures: Readonly<Record<string, Figure>> = {
  'density-altitude': ({ densityAltitude }, units) => formatDensityAltitude(densityAltitude, units),
  temperature: ({ temperature }) => formatTemperature(temperature),
  // The field's pressure altitude less its elevation is the altitude that an altimeter set to the QNH takes for zero.
  qnh: (air) => formatPressure(qnhOf(air)),
  pressure: ({ pressure }) => formatPressure(pressure),
  elevation: ({ elevation }, units) => formatHeight(elevation, units),
};

export const air = defineComponent<PacketContext, z.ZodType>({
  name: 'air',
  form: 'text',
  summary: `The air at the field: ${Object.keys(figures).join(', ')}.`,
  attributes: z.strictObject({}),
  label: nameOf(figures),
  example: ':air[density-altitude]',
  render: ({ label, context: { plan, units } }) => [
    { type: 'text', value: figures[label]?.(plan.air, units) ?? '' },
  ],
});
