import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { Command, Option } from 'commander';
import type { Approach } from '../flight/plan.ts';
import { type CardPaperName, cardPaperOf, cardPapers } from '../press/card/card-paper.ts';
import { printCard, unprintedCard } from '../press/card/fit-card.ts';
import { type MadeCard, makeCard } from '../press/card/make-card.ts';
import { findBrowser, NoBrowserError } from '../press/find-browser.ts';
import { UnprintableError, withPrinter } from '../press/print-pdf.ts';
import { ScenarioError } from '../press/scenario.ts';
import { writeTogether, writeWhole } from '../press/write-whole.ts';
import { readSchool } from '../school/read.ts';
import type { School } from '../school/school.ts';
import type { Wind } from '../units/wind-text.ts';
import { askedBy, dayOption, today, windOption } from './options.ts';
import { exitCodes, report } from './print-pages.ts';
import { type PrintedSetting, withSettingOptions } from './setting-options.ts';
import { version } from './version.ts';
import { weatherOf } from './weather.ts';

interface CardOptions extends PrintedSetting {
  aircraft?: string[];
  wind?: Wind;
  approach?: Approach;
  paper?: CardPaperName;
  date?: Date;
  out: string;
  browser?: string;
}

/** `chalkwing card`: one sheet for the knee, for an aircraft at a runway. A card that is not made leaves the earlier one. */
export function cardCommand(): Command {
  return withSettingOptions(new Command('card'), "the school's")
    .description('Print a card for the knee (HTML and PDF): one sheet for an aircraft at a runway')
    .option('--aircraft <ids...>', "default: the handbook's, else the school's")
    .addOption(
      new Option('--approach <kind>', "default: the school's").choices(['90', '180', '360', 'spiral']),
    )
    .option('--wind <wind>', "such as 210/12kt; default: the school's", windOption)
    .addOption(new Option('--paper <size>', "default: half of the school's").choices(Object.keys(cardPapers)))
    .option('--date <day>', 'the day that the card bears, such as 2026-11-25; default: today', dayOption)
    .option('--out <folder>', 'where the cards go, in its folder `cards`', join('dist', 'packets'))
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
  const made: MadeCard[] = [];
  const wrong = new Set<string>();
  for (const aircraftId of aircraftOf(school, options.aircraft)) {
    if (school.aircraftIds.includes(aircraftId) && !school.fleet.has(aircraftId)) {
      process.stderr.write(`No card is made for \`${aircraftId}\`: its file has a mistake.\n`);
      continue;
    }
    try {
      const choices = { ...options, ...weather };
      const paper = options.paper ?? cardPaperOf(school.paper);
      const approach = options.approach ?? school.defaults.approach;
      made.push(makeCard({ school, aircraftId, approach, choices, paper, date, version }));
      warnWithoutList(school, aircraftId);
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
      const option = asked[error.key];
      wrong.add(option === undefined ? error.message : `${option}: ${error.message}`);
    }
  }
  for (const message of wrong) process.stderr.write(`${message}\n`);
  const printed = made.length > 0 ? await printAll(made, options) : exitCodes.built;
  return Math.max(failed, wrong.size > 0 ? exitCodes.mistakes : exitCodes.built, printed);
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

async function printAll(cards: readonly MadeCard[], { out, browser: named }: CardOptions): Promise<number> {
  try {
    const browser = await findBrowser({ named });
    return await withPrinter(browser, async (printer) => {
      let code = exitCodes.built;
      for (const { path, input } of cards) {
        const file = join(out, path);
        try {
          // Nothing is written before the PDF is made: a card that does not fit leaves both earlier files.
          const { html, pdf } = await printCard(printer, input);
          await writeTogether([
            { path: `${file}.pdf`, content: pdf },
            { path: `${file}.html`, content: html },
          ]);
          process.stdout.write(`${relative('.', file)}.pdf (and .html)\n`);
        } catch (error) {
          if (!(error instanceof UnprintableError)) throw error;
          process.stderr.write(
            `${path} is not printed:\n${error.messages.map((line) => `  ${line}\n`).join('')}`,
          );
          code = exitCodes.mistakes;
        }
      }
      return code;
    });
  } catch (error) {
    if (!(error instanceof NoBrowserError)) throw error;
    for (const { path, input } of cards) await writeUnprinted(join(out, path), unprintedCard(input));
    process.stderr.write(`${error.message}\n`);
    return exitCodes.noBrowser;
  }
}

/** The HTML alone, not tried on its paper. A PDF of an earlier time beside it may say other figures, and is named. */
async function writeUnprinted(file: string, html: string): Promise<void> {
  await writeWhole(`${file}.html`, html);
  process.stderr.write(
    `${relative('.', file)}.html: without a browser nothing says that it fits one page.\n`,
  );
  if (existsSync(`${file}.pdf`))
    process.stderr.write(`${relative('.', file)}.pdf is of an earlier time: do not use it.\n`);
}
