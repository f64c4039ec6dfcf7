import { VFile } from 'vfile';
import type { z } from 'zod';
import { aircraftClasses } from '../flight/terms/aircraft-class.ts';
import { approachIds } from '../flight/terms/approach.ts';
import { fail } from '../messages/failures.ts';
import { type Checked, checkYaml } from '../school/check-yaml.ts';
import { choice, number, parsed, quantity, section, words } from '../school/fields.ts';
import { wholeNumberForm, windForm } from '../school/written-form.ts';
import { parseWind } from '../units/wind-text.ts';
import { day } from './day.ts';
import { oneOrMore } from './one-or-more.ts';

const lessonIds = oneOrMore(words('power-off-180'), '[power-off-180]');
const classes = oneOrMore(choice(...aircraftClasses), '[weight-shift, three-axis]');
const minutes = number(1, 600, '45')
  .refine(Number.isInteger, 'write whole minutes, such as `45`')
  .meta({ ...wholeNumberForm(1, 600) });

/** What is between the two lines `---` at the head of a lesson. */
export const frontMatter = section(
  {
    title: words('The power-off 180').describe('Title of the lesson'),
    summary: words('From the downwind key to the spot, engine idling')
      .describe('One line under the title')
      .optional(),
    approach: choice(...approachIds)
      .describe('The approach: degrees of turn from its first key to final, or a spiral')
      .prefault('180'),
    aircraft: words('osier-15').describe('An aircraft: the name of a file in `fleet/`').optional(),
    airfield: words('fallow-reach').describe('An airfield: the name of a file in `airfields/`').optional(),
    runway: words('"24"').describe('A runway of that airfield, in quotes').optional(),
    wind: parsed('210/12kt', parseWind, windForm).describe('Wind at the surface').optional(),
    day: day.describe('The day that the lesson asks for: its wind is held against it').optional(),
    power: choice('idle', 'stopped').describe('The engine: idling, or stopped').optional(),
    height: quantity('length', '100 ft', '10000 ft', '1000 ft')
      .describe('Height above the field at which the approach begins')
      .optional(),
    spacing: quantity('length', '50 m', '5000 m', '500 m')
      .describe('Distance of the downwind leg from the runway')
      .optional(),
    bank: quantity('angle', '5 deg', '75 deg', '30 deg').describe('Bank of the turns').optional(),
    temperature: quantity('temperature', '-60 C', '60 C', '25 C').describe('At the field').optional(),
    qnh: quantity('pressure', '850 hPa', '1090 hPa', '1008 hPa').describe('Altimeter setting').optional(),
    minutes: minutes.describe('How long the lesson takes').optional(),
    needs: lessonIds
      .describe('The lessons that come before this one: names of their files without `.md`')
      .optional(),
    class: classes.describe('The classes of aircraft that the lesson is for; left out, for all').optional(),
    shows: choice('not-to-be-flown')
      .describe(
        'What the lesson shows on purpose: with `not-to-be-flown`, a plan that is not to be flown is printed all the ' +
          'same, with a black band on every page; left out, no packet is made of such a plan',
      )
      .optional(),
  },
  'title: The power-off 180',
);

/** SI units and radians. What is left out comes from the school's defaults, the aircraft and the airfield. */
export type FrontMatter = z.output<typeof frontMatter>;

const fileStart = { line: 1, column: 1, offset: 0 };

/** Two lines `---`, the first at the very head of the file; what Markdown accepts for them, and as the end of a line. */
const fenced = /^\uFEFF?---[ \t]*(?:\r\n|\r|\n)(?:[\s\S]*?(?:\r\n|\r|\n))??(?=---[ \t]*(?:[\r\n]|$))/;

/**
 * Reads the front matter, its messages on the lesson's file; its source takes later messages, such as one about a
 * wind too strong to glide against. Undefined where there is none to read. Nothing below the front matter is looked
 * at.
 */
export function readFrontMatter(file: VFile): Checked<FrontMatter> | undefined {
  const source = String(file);
  const head = fenced.exec(source)?.[0];
  if (head === undefined) {
    const reason = /^\uFEFF?---[ \t]*\r?(\n|$)/.test(source)
      ? 'The front matter is not closed: put a line `---` below its last line'
      : 'The lesson has no front matter: begin the file with the lines `---`, `title: …` and `---`';
    fail(file, reason, 'front-matter', fileStart);
    return undefined;
  }
  if (/^\uFEFF?---\s*$/.test(head)) {
    fail(
      file,
      'The front matter is empty: write `title: …` between its two lines `---`',
      'missing-key',
      fileStart,
    );
    return undefined;
  }
  // The first line of the fence, turned into a comment of the same length, keeps every place that of the lesson file.
  const yaml = new VFile({ path: file.path, value: `#${head.slice(1)}` });
  yaml.messages = file.messages;
  return checkYaml<FrontMatter>(yaml, frontMatter);
}
