import { join } from 'node:path';
import { Command, Option } from 'commander';
import { VFile } from 'vfile';
import type { Approach } from '../flight/terms/approach.ts';
import { approachIds } from '../flight/terms/approach.ts';
import { cardOrder } from '../press/card/card-order.ts';
import { type CardPaperName, cardPaperOf, cardPapers } from '../press/card/card-paper.ts';
import { endingsInWords } from '../press/formats/list.ts';
import { GradeTally } from '../press/packet/grade-tally.ts';
import { attemptFor, type WrongChoices } from '../press/packet/lesson-messages.ts';
import { airfieldTexts } from '../press/printing/airfield-texts.ts';
import { codeMark } from '../press/printing/code-mark.ts';
import type { PrintOrder } from '../press/printing/order.ts';
import { readSchool } from '../school/read.ts';
import type { School } from '../school/school.ts';
import type { Wind } from '../units/wind-text.ts';
import { askedBy, dayOption, quantityOption, today, windOption } from './options.ts';
import { printOrders } from './print-orders.ts';
import { endWith, exitCodes, report } from './print-pages.ts';
import { type PrintedSetting, withSettingOptions } from './setting-options.ts';
import { version } from './version.ts';
import { weatherOf } from './weather.ts';

interface CardOptions extends PrintedSetting {
  aircraft?: string[];
  wind?: Wind;
  approach?: Approach;
  /** m. */
  height?: number;
  paper?: CardPaperName;
  date?: Date;
  out: string;
  again?: boolean;
  browser?: string;
}

/**
 * `chalkwing card`: one sheet for the knee, for an aircraft at a runway. A card that is not made leaves the earlier
 * one; none is made from a plan that is not to be flown.
 */
export function cardCommand(): Command {
  return withSettingOptions(new Command('card'), "the school's")
    .description(`Print a card for the knee (${endingsInWords()}): one sheet for an aircraft at a runway`)
    .option('--aircraft <ids...>', "default: the handbook's, else the school's")
    .addOption(new Option('--approach <kind>', "default: the school's").choices(approachIds))
    .option(
      '--height <height>',
      "at the start of the approach, such as 1000ft; default: the pattern's, or the approach's own",
      quantityOption('length'),
    )
    .option('--wind <wind>', "such as 210/12kt; default: the school's", windOption)
    .addOption(new Option('--paper <size>', "default: half of the school's").choices(Object.keys(cardPapers)))
    .option(
      '--date <day>',
      'the day that the card bears, such as 2026-11-25; default: today, while one that has not changed keeps its day',
      dayOption,
    )
    .option('--out <folder>', 'where the cards go, in its folder `cards`', join('dist', 'packets'))
    .option('--again', 'print also what has not changed since it was printed')
    .option('--browser <path>', 'the browser that prints the PDF')
    .action(async (options: CardOptions) => {
      process.exitCode = await printCards(options);
    });
}

async function printCards(options: CardOptions): Promise<number> {
  const weather = weatherOf(options);
  const date = options.date ?? today();
  const { files, withSoundAircraft: school } = await readSchool(options.school, date);
  const failed = report(files);
  if (!school || !weather) return Math.max(failed, weather ? exitCodes.built : exitCodes.mistakes);
  const asked = askedBy(options, weather);
  if (options.height !== undefined) asked.height = '--height';
  const common = { code: codeMark(), version, airfields: airfieldTexts(files, school) };
  const said = { asked, choices: new Map() as WrongChoices, tally: new GradeTally() };
  const names = new VFile({ path: 'cards' });
  const attempt = attemptFor({ file: names, source: undefined }, asked, said.choices);
  const orders: PrintOrder[] = [];
  const all = [...files, names];
  for (const aircraftId of aircraftOf(school, options.aircraft)) {
    if (school.aircraftIds.includes(aircraftId) && !school.fleet.has(aircraftId)) {
      process.stderr.write(`No card is made for \`${aircraftId}\`: its file has a mistake.\n`);
      continue;
    }
    const choices = { ...options, ...weather };
    const paper = options.paper ?? cardPaperOf(school.paper);
    const approach = options.approach ?? school.defaults.approach;
    const { height } = options;
    const request = { school, aircraftId, approach, choices, height, paper, date, version };
    const card = attempt(() => cardOrder(request, common, said));
    if (!card) continue;
    orders.push(card.order);
    all.push(card.file);
    warnWithoutList(school, aircraftId);
  }
  const printed = await printOrders(orders, 'card', school.folder, options);
  report(all.slice(files.length));
  for (const message of said.choices.keys()) process.stderr.write(`${message}\n`);
  if (printed === exitCodes.noBrowser)
    process.stderr.write('Without a browser nothing says that a card fits one page.\n');
  return endWith({ printed, files: all, ...said }, 'card');
}

function aircraftOf(school: School, asked: readonly string[] = []): readonly string[] {
  if (asked.length > 0) return [...new Set(asked)];
  const handbook = school.handbook?.aircraft ?? [];
  return handbook.length > 0 ? handbook : [school.defaults.aircraft];
}

function warnWithoutList(school: School, id: string): void {
  const aircraft = school.fleet.get(id);
  if (!aircraft || (aircraft.engineFailure ?? []).length > 0) return;
  process.stderr.write(
    `${join(school.folder, 'fleet', `${id}.yaml`)}: ${aircraft.name} has no engine-failure list, and its card says so: ` +
      "add the key `engine-failure`, a list of its lines in the order of the aircraft's own handbook\n",
  );
}
