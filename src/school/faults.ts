import type { VFile } from 'vfile';
import type { z } from 'zod';
import { type AircraftClass, aircraftClasses } from '../flight/terms/aircraft-class.ts';
import { hasErrors } from '../messages/failures.ts';
import { didYouMean } from '../messages/nearest-name.ts';
import { QuantityError } from '../units/quantity.ts';
import { checkYaml } from './check-yaml.ts';
import { list, parsed, section, words } from './fields.ts';
import { readFlyText } from './fly-text.ts';
import { someOfForm } from './written-form.ts';

/** `weight-shift`, or several with a space between them, as directives write it. */
const classWords = parsed(
  'weight-shift',
  (text): readonly AircraftClass[] =>
    text.split(/[\s,]+/).map((word) => {
      const found = aircraftClasses.find((name) => name === word);
      if (found) return found;
      const known = aircraftClasses.map((name) => `\`${name}\``).join(', ');
      throw new QuantityError(`\`${word}\` is none of ${known}${didYouMean(word, aircraftClasses)}`);
    }),
  someOfForm(aircraftClasses),
);

const idPattern = '^[a-z0-9]+(-[a-z0-9]+)*$';

const idWord = parsed(
  'base-turn-late',
  (text) => {
    if (new RegExp(idPattern).test(text)) return text;
    throw new QuantityError(
      `\`${text}\` cannot be an id: write small letters, digits and hyphens, such as \`base-turn-late\``,
    );
  },
  { takes: 'small letters, digits and hyphens', type: ['string', 'number'], pattern: idPattern },
);

const flyWords = parsed('"base-turn: 6 s late"', readFlyText, {
  takes: 'what is changed, a colon, and how, in quotes',
  type: 'string',
});

const row = section(
  {
    id: idWord.describe(
      'Name of the row, for lessons that pick some rows; two rows may share one where each has a class of its own',
    ),
    fault: words('Base turn late').describe('The fault, in a few words'),
    sign: words('The spot is far behind the wing.').describe('What the student sees, hears or feels'),
    cause: words('Eyes inside at the key.').describe('Why it happens'),
    recovery: words('Turn at once and cut the corner.').describe('What to do now'),
    prevent: words('Say the place of the turn aloud before the key.').describe(
      'What keeps it from happening again',
    ),
    class: classWords.describe('Classes of aircraft that the row is for; left out, for all').optional(),
    fly: flyWords
      .describe('What changes when the fault is flown, in quotes; left out, it is not flown')
      .optional(),
  },
  '{ id: base-turn-late, fault: Base turn late, sign: ..., cause: ..., recovery: ..., prevent: ... }',
);

/** What a file of faults may hold. */
export const faults = section(
  {
    name: words('Faults of the power-off approach').describe('Title of the table'),
    source: words('who wrote this, and when').describe('Where the rows come from; printed under the table'),
    faults: list(row, '[{ id: base-turn-late, ... }]', 1).describe('The rows, the most urgent first'),
  },
  '{ name: Faults of the power-off approach, ... }',
);

/** A file of common faults, its rows in the file's order; `class` says which aircraft a row is for (left out: all). */
export type FaultsFile = z.output<typeof faults>;
export type Fault = FaultsFile['faults'][number];

/** Reads a file of faults; messages land on `file`, and where one is an error there is no value. */
export function parseFaults(file: VFile): FaultsFile | undefined {
  const checked = checkYaml(file, faults);
  if (!checked) return undefined;
  reportRepeats(checked.source);
  return hasErrors(file) ? undefined : checked.value;
}

/** A lesson picks rows by their ids: two rows may share one as long as no class of aircraft has both. */
function reportRepeats(source: NonNullable<ReturnType<typeof checkYaml>>['source']): void {
  const rows = (source.data as { faults?: unknown } | undefined)?.faults;
  if (!Array.isArray(rows)) return;
  const seen: { id: string; classes: readonly string[] | undefined; place: number }[] = [];
  rows.forEach((each: { id?: unknown; class?: unknown } | null, place) => {
    const id = typeof each?.id === 'string' ? each.id.trim() : '';
    if (id === '') return;
    const classes = typeof each?.class === 'string' ? each.class.trim().split(/[\s,]+/) : undefined;
    const first = seen.find((other) => other.id === id && share(other.classes, classes));
    if (first === undefined) seen.push({ id, classes, place });
    else {
      const reason =
        `\`id\` in \`faults\` ${place + 1}: \`${id}\` is the id of row ${first.place + 1} already; two rows may share one ` +
        'where each has a `class` of its own';
      source.report(reason, 'repeated-id', ['faults', place, 'id']);
    }
  });
}

/** Whether some aircraft has both. */
const share = (a: readonly string[] | undefined, b: readonly string[] | undefined) =>
  !a || !b || a.some((each) => b.includes(each));
