import { describeSchema } from '../school/json-schema.ts';
import type { AuthorFile, AuthorLanguage } from './author-file.ts';
import { lessonHead } from './definitions.ts';
import { byName, directiveEntry } from './directive-entry.ts';
import { keyTable } from './key-table.ts';
import { code, fenced, page, table } from './markdown.ts';
import { quantityTable, quantityWords } from './quantity-table.ts';

const shortLesson = `---
title: Judging the base turn
summary: One glide, flown four times
approach: "180"
minutes: 60
---

:::objective
To turn base where the view says so, and to say why before turning.
:::

## The picture

Abeam the spot you have :key[downwind-key]{show=height}. In today's wind of :wind[surface] the base turn begins
:key[base-turn]{show=past-abeam} past abeam.

::pattern

:::caution
Go around from any final that is not right by 300 ft.
:::`;

const nested = `::::for{class=weight-shift}
:::caution
The bar tells you the speed before the needle does.
:::
::::`;

/** The reference of what a lesson may hold. */
export function lessonLanguagePage({ groups }: Pick<AuthorLanguage, 'groups'>): AuthorFile {
  const content = page([
    '# Writing a lesson',
    'A lesson is a text file in the folder of the school, its name ending in `.md`. It begins with a few keys between two lines `---`. Below them it is Markdown: `#` for headings, `-` for lists, `**bold**`, tables with `|`, footnotes. What Markdown has no sign for is written as a *directive*. A directive is a name with colons before it; the page gets a section, a figure, a drawing or a table in its place.',
    fenced('markdown', shortLesson),
    '`chalkwing check` reads every lesson of the school and shows each mistake with its line and what to type instead. `chalkwing build` prints. This page is made from the definitions that check what you type: what stands here is what is accepted. The aircraft, the airfields and the school itself have [a page of their own](school-files.md), which also says how an editor can help while you type.',
    '## How directives are written',
    table(
      ['Where', 'Written', 'Remember'],
      [
        [
          'in a sentence',
          '`:key[final]{show=height}`',
          'one colon; in brackets what is asked for, in braces how',
        ],
        ['on a line of its own', '`::pattern`', 'two colons; an empty line before and after it'],
        ['around text', '`:::caution` … `:::`', 'three colons, and three more on the line that ends it'],
      ],
    ),
    'Braces hold `name=value`, with a space between two of them; a value that has a space of its own is put in quotes: `banks="20deg 30deg"`. Braces that would be empty are left out. A colon in ordinary text stays a colon: `10:30` and `6:1` need no care.',
    'To put text around text, give the outer one a fourth colon at both its ends:',
    fenced('markdown', nested),
    `The directives: ${groups
      .flatMap(({ components }) => [...byName(components).keys()])
      .map((name) => `[${code(name)}](#${name})`)
      .join(', ')}.`,
    ...groups.flatMap(({ title, about, components }) => [
      `## ${title}`,
      about,
      ...[...byName(components)].flatMap(([name, forms]) => directiveEntry(name, forms)),
    ]),
    `## ${lessonHead.title}`,
    `${lessonHead.about}. Only the title is needed. What is left out comes from the aircraft, the airfield and \`school.yaml\`.`,
    keyTable(describeSchema(lessonHead.definition)),
    '## Quantities and their units',
    quantityWords,
    quantityTable(),
  ]);
  return { path: 'docs/lesson-language.md', content };
}
