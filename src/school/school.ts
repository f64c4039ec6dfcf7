import type { VFile } from 'vfile';
import type { z } from 'zod';
import { parseQuantity, QuantityError } from '../units/quantity.ts';
import { parseWind, type Wind } from '../units/wind-text.ts';
import { camelKeys } from './camel-keys.ts';
import { checkYaml } from './check-yaml.ts';
import { choice, type Field, list, parsed, quantity, section, words } from './fields.ts';
import type { SchoolFolder } from './school-folder.ts';
import { checkNames } from './school-names.ts';
import { hasErrors } from './yaml-source.ts';

/** A height that the school may raise above the built-in minimum and never lower. m. */
function minimum(builtIn: string, most: string): Field<number> {
  const least = parseQuantity(builtIn, 'length');
  return parsed(builtIn, (text) => {
    const height = parseQuantity(text, 'length', builtIn);
    // 91.44 m is 300 ft but for the last bit.
    if (height < least - 1e-9) {
      const advice = `a school may tighten it, never loosen it: write \`${builtIn}\` or more`;
      throw new QuantityError(`\`${text}\` is below the built-in minimum of ${builtIn}; ${advice}`);
    }
    if (height <= parseQuantity(most, 'length')) return height;
    throw new QuantityError(`\`${text}\` is more than any approach could keep to: write \`${most}\` or less`);
  });
}

const windField = parsed('210/12kt', (text): Wind & { text: string } => ({ text, ...parseWind(text) }));

/** Worst first: in whose hands it was, and then how well. */
const usualGrading = ['not yet', 'with help', 'alone', 'well'] as const;

const keys = section(
  {
    name: words('Fallow Reach flying school'),
    source: words('who wrote this, and when'),
    units: section(
      {
        height: choice('ft', 'm').prefault('ft'),
        distance: choice('m', 'ft').prefault('m'),
        speed: choice('kt', 'km/h', 'mph').prefault('kt'),
      },
      '{ height: ft, distance: m, speed: kt }',
    ).prefault({}),
    paper: choice('A4', 'Letter').prefault('A4'),
    cautions: list(
      words('Fly these only with your instructor.'),
      '[Fly these only with your instructor.]',
    ).default([]),
    defaults: section(
      {
        aircraft: words('osier-15'),
        airfield: words('fallow-reach'),
        runway: words('"24"'),
        wind: windField,
        power: choice('idle', 'stopped').prefault('idle'),
        approach: choice('90', '180', '360', 'spiral').prefault('180'),
        gust: quantity('speed', '1 kt', '100 kt', '18 kt').optional(),
        temperature: quantity('temperature', '-60 C', '60 C', '25 C').optional(),
        qnh: quantity('pressure', '850 hPa', '1090 hPa', '1008 hPa').optional(),
      },
      '{ aircraft: osier-15, airfield: fallow-reach, runway: "24", wind: 210/12kt }',
    ),
    minimums: section(
      {
        'final-turn': minimum('300 ft', '2000 ft').prefault('300 ft'),
        'obstacle-clearance': minimum('50 ft', '500 ft').prefault('50 ft'),
      },
      '{ final-turn: 300 ft, obstacle-clearance: 50 ft }',
    ).prefault({}),
    grading: list(words('alone'), '[not yet, with help, alone, well]', 2).default([...usualGrading]),
    handbook: section(
      {
        title: words('Training handbook'),
        chapters: list(words('power-off-180'), '[power-off-180]').default([]),
        aircraft: list(words('osier-15'), '[osier-15]').default([]),
      },
      '{ title: Training handbook, chapters: [power-off-180], aircraft: [osier-15] }',
    ).optional(),
  },
  '{ name: Fallow Reach flying school, ... }',
);

const settings = keys.transform(camelKeys);

/** What `school.yaml` says, defaults filled in. SI units and radians; `units` are those of the printed page. */
export type SchoolSettings = z.output<typeof settings>;

export interface School extends SchoolSettings, SchoolFolder {}

/**
 * Reads `school.yaml` and holds every name in it against what lies beside it; messages land on `file`, and where one
 * is an error there is no value.
 */
export function parseSchool(file: VFile, beside: SchoolFolder): School | undefined {
  const checked = checkYaml<SchoolSettings>(file, settings);
  if (!checked) return undefined;
  checkNames(checked.source, beside);
  const sound = !hasErrors(file);
  return sound && checked.value ? { ...checked.value, ...beside } : undefined;
}
