import { expect } from 'vitest';
import { wordsOf } from '../packet-school.ts';
import { openScreen } from '../screen.ts';
import type { Addition } from './addition.ts';

const definition = `import { h } from 'hastscript';
import { z } from 'zod';
import { defineComponent } from '../../src/lesson/component.ts';
import { formatTime } from '../../src/words/figures/format.ts';
import { nameOf } from '../choice-of.ts';
import type { PacketContext } from '../context.ts';

const openings = { flight: 'The flight', glide: 'The glide' };
const meanings = { flight: 'called the flight', glide: 'called the glide' };

const attributes = z.strictObject({
  what: nameOf(openings, meanings).describe('What it is called').default('flight'),
});

export const timeDown = defineComponent<PacketContext, typeof attributes>({
  name: 'time-down',
  form: 'leaf',
  onScreen: 'made-again',
  summary: 'How long it takes from the first key to the wheels.',
  attributes,
  example: '::time-down{what=glide}',
  render: ({ ordinal, attributes: { what }, context: { plan } }) => [
    h('p', { className: ['time-down'], id: \`time-down-\${ordinal}\` }, [
      \`\${openings[what]} takes \${formatTime(plan.touchdown.time - plan.track[0]!.time)}.\`,
    ]),
  ],
});
`;

const lesson = `---
title: Time on the way down
approach: "180"
wind: 210/12kt
---

::time-down{what=glide}

::keys
`;

/** A folder with its definition, and its import and its name in the list: nothing else knows of it. */
export const directive: Addition = {
  name: 'a directive',
  add: async (house) => {
    await house.write('components/time-down/time-down.ts', definition);
    const list = 'components/list.ts';
    await house.insert(
      list,
      /(?=import \{ turn \})/,
      "import { timeDown } from './time-down/time-down.ts';\n",
    );
    await house.insert(list, /title: 'Tables',[^[]*\[keys,/, ' timeDown,');
  },
  mayMake: ['components/time-down/'],
  mayChange: { 'components/list.ts': 2 },
  lessons: { 'time-down': lesson },
  check: async ({ house, packet, words }) => {
    const html = await packet('time-down');
    const [, printed] = /<p class="time-down" id="time-down-1" data-live="0">(.*?)<\/p>/.exec(html) ?? [];
    expect(wordsOf(printed!)).toMatch(/^The glide takes \d/);
    await checkStudyPage(html);

    expect(words.directives.find(({ name }) => name === 'time-down')).toMatchObject({
      form: 'leaf',
      colons: '::',
      group: 'Tables',
      summary: 'How long it takes from the first key to the wheels.',
      attributes: [
        {
          name: 'what',
          usual: 'flight',
          values: [
            { value: 'flight', meaning: 'called the flight' },
            { value: 'glide', meaning: 'called the glide' },
          ],
        },
      ],
      snippet: expect.stringMatching(/^::time-down\{what=\$\{1\|glide,flight\|\}\}/),
    });

    const page = await house.read('docs/lesson-language.md');
    const section = page.split(/^### /m).find((each) => each.startsWith('`time-down`'))!;
    expect(section).toContain('How long it takes from the first key to the wheels.');
    expect(section).toContain('| `what` | What it is called');
    expect(section).toContain('::time-down{what=glide}');
    const snippets = JSON.parse(await house.read('schemas/lesson.code-snippets.json')) as Record<
      string,
      { prefix: string }
    >;
    expect(Object.values(snippets).filter(({ prefix }) => prefix === '::time-down')).toHaveLength(1);
  },
};

/** In another wind it says another time: the one that the table of keys, made again as well, has for the touchdown. */
async function checkStudyPage(html: string): Promise<void> {
  const screen = await openScreen();
  try {
    const page = await screen.show(html, 1280);
    await page.waitForSelector('.study');
    const said = async () => wordsOf((await page.$eval('.time-down', (each) => each.textContent))!);
    const before = await said();
    await page.$eval('input[type=number][aria-labelledby="study-speed"]', (field) => {
      (field as HTMLInputElement).value = '2';
      field.dispatchEvent(new Event('input'));
    });
    await page.waitForSelector('.time-down[data-study=moved]');
    const touchdown = await page.$eval('table.keys tr:last-child td:last-child', (each) => each.textContent);
    expect(await said()).toBe(`The glide takes ${wordsOf(touchdown!)}.`);
    expect(await said()).not.toBe(before);
  } finally {
    await screen.close();
  }
}
