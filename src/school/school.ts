import type { VFile } from 'vfile';
import type { z } from 'zod';
import { approachIds } from '../flight/terms/approach.ts';
import { hasErrors } from '../messages/failures.ts';
import { parseQuantity, QuantityError } from '../units/quantity.ts';
import { parseWind, type Wind } from '../units/wind-text.ts';
import { camelKeys } from './camel-keys.ts';
import { checkYaml } from './check-yaml.ts';
import { choice, type Field, list, parsed, quantity, section, words } from './fields.ts';
import type { SchoolFolder } from './school-folder.ts';
import { checkNames } from './school-names.ts';
import { heightForm, quantityForm, windForm } from './written-form.ts';

/** A height that the school may raise above the built-in minimum and never lower. m. */
function minimum(builtIn: string, most: string): Field<number> {
  const least = parseQuantity(builtIn, 'length');
  const read = (text: string): number => {
    const height = parseQuantity(text, 'length', builtIn);
    // 91.44 m is 300 ft, except for the last bit.
    if (height < least - 1e-9) {
      const advice = `a school may tighten it, never loosen it: write \`${builtIn}\` or more`;
      throw new QuantityError(`\`${text}\` is below the built-in minimum of ${builtIn}; ${advice}`);
    }
    if (height <= parseQuantity(most, 'length')) return height;
    throw new QuantityError(`\`${text}\` is more than any approach could keep to: write \`${most}\` or less`);
  };
  return parsed(builtIn, read, heightForm(builtIn, most));
}

/** A speed that the school may lower below the built-in limit and never raise. m/s. */
function maximum(builtIn: string): Field<number> {
  const most = parseQuantity(builtIn, 'speed');
  const read = (text: string): number => {
    const speed = parseQuantity(text, 'speed', builtIn);
    if (speed > most + 1e-9) {
      const advice = `a school may tighten it, never loosen it: write \`${builtIn}\` or less`;
      throw new QuantityError(`\`${text}\` is above the built-in limit of ${builtIn}; ${advice}`);
    }
    if (speed >= 0) return speed;
    throw new QuantityError(`\`${text}\` is less than none: write \`0 kt\` or more`);
  };
  return parsed(builtIn, read, quantityForm('speed', '0 kt', builtIn));
}

const windField = parsed(
  '210/12kt',
  (text): Wind & { text: string } => ({ text, ...parseWind(text) }),
  windForm,
);

/** Worst first: whose work it was, and then how well it was done. */
const usualGrading = ['not yet', 'with help', 'alone', 'well'] as const;

const keys = section(
  {
    name: words('Fallow Reach flying school').describe('The school as the pages call it'),
    source: words('who wrote this, and when').describe("Who answers for the school's own words here"),
    units: section(
      {
        height: choice('ft', 'm').describe('Unit of heights').prefault('ft'),
        distance: choice('m', 'ft').describe('Unit of distances on the ground').prefault('m'),
        speed: choice('kt', 'km/h', 'mph').describe('Unit of speeds').prefault('kt'),
      },
      '{ height: ft, distance: m, speed: kt }',
    )
      .describe('Units of the printed pages')
      .prefault({}),
    paper: choice('A4', 'Letter').describe('Paper that packets are printed on').prefault('A4'),
    cautions: list(words('Fly these only with your instructor.'), '[Fly these only with your instructor.]')
      .describe("The school's own cautions, printed beside the built-in ones")
      .default([]),
    defaults: section(
      {
        aircraft: words('osier-15').describe('An aircraft: the name of a file in `fleet/`'),
        airfield: words('fallow-reach').describe('An airfield: the name of a file in `airfields/`'),
        runway: words('"24"').describe('A runway of that airfield, in quotes'),
        wind: windField.describe('Wind at the surface'),
        power: choice('idle', 'stopped').describe('The engine: idling, or stopped').prefault('idle'),
        approach: choice(...approachIds)
          .describe('The approach: degrees of turn from its first key to final, or a spiral')
          .prefault('180'),
        gust: quantity('speed', '1 kt', '100 kt', '18 kt').describe('Highest gust').optional(),
        temperature: quantity('temperature', '-60 C', '60 C', '25 C')
          .describe('At the field; left out, that of the standard atmosphere')
          .optional(),
        qnh: quantity('pressure', '850 hPa', '1090 hPa', '1008 hPa')
          .describe('Altimeter setting; left out, that of the standard atmosphere')
          .optional(),
      },
      '{ aircraft: osier-15, airfield: fallow-reach, runway: "24", wind: 210/12kt }',
    ).describe('What a lesson is worked out for where it says nothing else'),
    minimums: section(
      {
        'final-turn': minimum('300 ft', '2000 ft')
          .describe('Least height at which the turn to final is complete')
          .prefault('300 ft'),
        'obstacle-clearance': minimum('50 ft', '500 ft')
          .describe('Least height over an obstacle')
          .prefault('50 ft'),
      },
      '{ final-turn: 300 ft, obstacle-clearance: 50 ft }',
    )
      .describe("The school's own minimums: never looser than the built-in ones")
      .prefault({}),
    limits: section(
      {
        tailwind: maximum('5 kt')
          .describe("Most tailwind on the runway, gusts counted; an aircraft's own limit holds as well")
          .optional(),
      },
      '{ tailwind: 5 kt }',
    )
      .describe("The school's own limits: never looser than the built-in ones")
      .optional(),
    grading: list(words('alone'), '[not yet, with help, alone, well]', 2)
      .describe(
        `The words that standards are graded with, the least first; left out: ${usualGrading.join(', ')}`,
      )
      .default([...usualGrading]),
    handbook: section(
      {
        title: words('Training handbook').describe('Title of the handbook'),
        chapters: list(words('power-off-180'), '[power-off-180]')
          .describe('Its lessons in their order: names of their files without `.md`')
          .default([]),
        aircraft: list(words('osier-15'), '[osier-15]')
          .describe('The aircraft it is printed for: names of files in `fleet/`')
          .default([]),
      },
      '{ title: Training handbook, chapters: [power-off-180], aircraft: [osier-15] }',
    )
      .describe('The handbook: what is built when no lesson is named')
      .optional(),
  },
  '{ name: Fallow Reach flying school, ... }',
);

/** What `school.yaml` may hold. */
export const settings = keys.transform(camelKeys);

/** What `school.yaml` says, defaults filled in. SI units and radians; `units` are those of the printed page. */
export type SchoolSettings = z.output<typeof settings>;

export interface School extends SchoolSettings, SchoolFolder {}

/**
 * Reads `school.yaml` and checks every name in it against what lies beside it; messages land on `file`, and where one
 * is an error there is no value.
 */
export function parseSchool(file: VFile, beside: SchoolFolder): School | undefined {
  const checked = checkYaml<SchoolSettings>(file, settings);
  if (!checked) return undefined;
  checkNames(checked.source, beside);
  const sound = !hasErrors(file);
  return sound && checked.value ? { ...checked.value, ...beside } : undefined;
}
