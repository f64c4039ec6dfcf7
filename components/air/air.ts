import { z } from 'zod';
import { qnhOf } from '../../src/flight/air/air.ts';
import type { FieldAir } from '../../src/flight/terms/plan.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import {
  formatDensityAltitude,
  formatHeight,
  formatPressure,
  formatTemperature,
} from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
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

const meanings = {
  'density-altitude': 'density altitude of the field',
  temperature: 'temperature at the field',
  qnh: 'altimeter setting that shows its elevation on the ground',
  pressure: 'pressure at the field',
  elevation: 'height of the field above mean sea level',
};

export const air = defineComponent<PacketContext, z.ZodType>({
  name: 'air',
  form: 'text',
  onScreen: 'made-again',
  summary: 'A figure of the air at the field.',
  attributes: z.strictObject({}),
  label: nameOf(figures, meanings),
  example: ':air[density-altitude]',
  render: ({ label, context: { plan, units } }) => [
    { type: 'text', value: figures[label]?.(plan.air, units) ?? '' },
  ],
});
