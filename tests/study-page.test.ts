import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { ElementContent } from 'hast';
import type { Page } from 'puppeteer-core';
import { VFile } from 'vfile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Edition, PacketContext } from '../components/context.ts';
import { components } from '../components/list.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import type { PlanRequest } from '../src/flight/terms/plan.ts';
import type { Day } from '../src/lesson/day.ts';
import { parseLesson } from '../src/lesson/parse-lesson.ts';
import { renderLesson } from '../src/lesson/render-lesson.ts';
import { documentHtml } from '../src/press/formats/document-html.ts';
import { picturesIn } from '../src/press/packet/lesson-pictures.ts';
import { packetDocument } from '../src/press/packet/packet.ts';
import { packetContext } from '../src/press/packet/packet-context.ts';
import { planOf, scenarioOf } from '../src/press/packet/scenario.ts';
import { papers } from '../src/press/paper/paper.ts';
import { studyBundle } from '../src/press/study/study-bundle.ts';
import { studyData } from '../src/press/study/study-data.ts';
import { renderStudyLesson } from '../src/press/study/study-lesson.ts';
import { withStudy } from '../src/press/study/with-study.ts';
import { readSchool } from '../src/school/read.ts';
import { tableRows, wordsOf } from './packet-school.ts';
import { saidCautions } from './said-cautions.ts';
import { openScreen, type Screen } from './screen.ts';

/*
 * The packets as a student uses them on a screen: the page computes again what the press computes here, and the two
 * are compared. Pages are put into the browser as text, with no server and no file beside them.
 */

const lessons = fileURLToPath(new URL('../lessons', import.meta.url));

interface Built {
  readonly request: PlanRequest;
  /** As the press prints it, without marks. */
  readonly plain: string;
  readonly html: string;
}

async function build(
  lessonId: string,
  {
    edition = 'student',
    change = {},
    day,
  }: { edition?: Edition; change?: Partial<PlanRequest>; day?: Day } = {},
): Promise<Built> {
  const { value: school } = await readSchool(lessons);
  const path = `${lessons}/${lessonId}.md`;
  const file = new VFile({ path, value: await readFile(path, 'utf8') });
  const lesson = parseLesson<PacketContext>(file, components, { pictures: picturesIn(lessons) });
  const { frontMatter } = lesson;
  const { request: asked, airfield } = scenarioOf(school!, frontMatter!, 'osier-15', {});
  const request = { ...asked, ...change };
  const plan =
    Object.keys(change).length > 0
      ? planApproach(request)
      : planOf({ ...scenarioOf(school!, frontMatter!, 'osier-15', {}), request });
  const context = packetContext(school!, { request, plan }, edition, papers.A4);
  const page = (render: typeof renderLesson<PacketContext>) => {
    const body = render(lesson, context, file);
    return packetDocument({
      title: frontMatter!.title,
      body: body.children as ElementContent[],
      edition,
      plan,
      request,
      school: school!,
      rules: airfield.rules,
      day,
      units: school!.units,
      paper: papers.A4,
      date: new Date('2031-05-06'),
      fingerprint: '0123abcd',
    });
  };
  expect(file.messages.map(String)).toEqual([]);
  const marked = page(renderStudyLesson);
  const data = studyData({ context, rules: airfield.rules, day, uses: lesson.uses });
  const html = documentHtml(withStudy(marked, data));
  return { request, plain: documentHtml(page(renderLesson)), html };
}

let screen: Screen;
let packet: Built;
const complaints: string[] = [];

beforeAll(async () => {
  [screen, packet] = await Promise.all([openScreen(), build('power-off-180')]);
});
afterAll(() => screen?.close());

async function open(html: string, width = 1280): Promise<Page> {
  const page = await screen.show('<!doctype html><title>Empty</title>', width);
  page.removeAllListeners('pageerror');
  page.removeAllListeners('console');
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => complaints.push(message.text()));
  await page.setContent(html, { waitUntil: 'load' });
  await page.waitForSelector('.study');
  return page;
}

const settled = async (page: Page) => {
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
  await page.waitForFunction('!document.querySelector("[data-study=waiting]")');
};

/** Types a number into one of the dials, as a person does. */
async function type(page: Page, label: string, value: string): Promise<void> {
  const field = await page.$(`input[type=number][aria-labelledby="study-${label}"]`);
  await field!.evaluate((each) => (each as HTMLInputElement).select());
  await field!.type(value);
  await settled(page);
}

const htmlOf = async (page: Page) =>
  ((await page.evaluate('document.documentElement.outerHTML')) as string).replaceAll('&nbsp;', '\u00a0');
const words = (page: Page, place: string) =>
  page.$$eval(place, (found) => found.map((each) => each.textContent ?? ''));
const liveParts = (page: Page) =>
  page.evaluate(`[...document.querySelectorAll(
    '[data-live], .table-room, .masthead, .packet-cautions')].map((each) => each.outerHTML).join('\\n')`) as Promise<string>;

/** The words in the sentences and tables that are made again; drawings are measured with other rulers. */
function liveWords(html: string): string[] {
  return [...html.matchAll(/<(span|table|p)\b[^>]*data-live="[^"]*"[\s\S]*?<\/\1>/g)].map(([found]) =>
    wordsOf(found),
  );
}

describe('a packet on a screen', () => {
  it('holds one script that needs nothing else, and the whole file is under 1.5 MB', async () => {
    const [reached] =
      /\brequire\(|\bprocess\.|\bBuffer\b|["']node:|\bfetch\(|XMLHttpRequest/.exec(studyBundle()) ?? [];
    expect(reached).toBeUndefined();
    const large = await build('engine-failure');
    for (const { html } of [packet, large]) {
      expect(Buffer.byteLength(html)).toBeLessThan(1.5e6);
      expect(html.includes(lessons)).toBe(false);
    }
  });

  it('is the packet as printed but for its marks, and has no more in it for a reader without scripts', async () => {
    const marks = /<span data-live="\d+">([^<]*)<\/span>| data-(?:live|printed)="[^"]*"/g;
    const added = /<meta http-equiv="Content-Security-Policy"[^>]*>|<script[\s\S]*?<\/script>/g;
    expect(packet.html.replace(added, '').replace(marks, '$1') === packet.plain).toBe(true);
  });

  it('gives every sentence, table and caution of another wind exactly as the press does', async () => {
    const wind = { from: (270 * Math.PI) / 180, speed: (16 * 1852) / 3600 };
    const pressed = await build('power-off-180', { change: { wind } });
    const page = await open(packet.html);
    await type(page, 'direction', '270');
    await type(page, 'speed', '16');
    const html = await htmlOf(page);
    expect(tableRows(html, /class="keys"/)).toEqual(tableRows(pressed.html, /class="keys"/));
    expect(tableRows(html, /class="keys"/)).not.toEqual(tableRows(packet.html, /class="keys"/));
    expect(liveWords(html).length).toBeGreaterThan(20);
    expect(liveWords(html)).toEqual(liveWords(pressed.html));
    const track = (of: string) =>
      /<g id="pattern-1-drawing-track">[\s\S]*?<\/g>/.exec(of)![0].match(/ d="[^"]*"/g);
    expect(track(html)).toEqual(track(pressed.html));
    const part = (of: string, pattern: RegExp) => wordsOf(pattern.exec(of)![0]);
    for (const pattern of [
      /<dl class="setting">[\s\S]*?<\/dl>/,
      /<section class="caution packet-cautions"[\s\S]*?<\/section>/,
    ]) {
      expect(part(html, pattern)).toBe(part(pressed.html, pattern));
    }
    const caption = /<figcaption>[\s\S]*?<\/figcaption>/;
    expect(part(html, caption)).toBe(part(pressed.html, caption));
  });
});

describe('a setting moved on the page', () => {
  it('is held against the day that the lesson asks for', async () => {
    // 7 kt: the printed wind of 8 kt breaks the limit.
    const { html } = await build('power-off-180', { day: { mostWind: 3.65 } });
    const page = await open(html);
    const broken = async () =>
      (await words(page, '.packet-cautions strong')).filter((each) => each.includes('the lesson asks for'));
    expect(await broken()).toEqual([expect.stringMatching(/^The wind is 8.kt/)]);
    await type(page, 'speed', '7');
    expect(await broken()).toEqual([]);
    expect((await words(page, '.packet-cautions'))[0]).toContain('The day this lesson asks for');
    await type(page, 'speed', '10');
    expect(await broken()).toEqual([expect.stringMatching(/^The wind is 10.kt/)]);
  });

  it('is drawn, and everything that is not made again says that it is as printed', async () => {
    const page = await open(packet.html);
    const track = '#pattern-1-drawing-track path';
    const before = await page.$$eval(track, (paths) => paths.map((path) => path.getAttribute('d')));
    await type(page, 'speed', '5');
    const after = await page.$$eval(track, (paths) => paths.map((path) => path.getAttribute('d')));
    expect(after).not.toEqual(before);
    expect(await words(page, '#pattern-1-drawing-legend')).toEqual([expect.stringMatching(/Wind 225°.5.kt/)]);
    const tags = await words(page, '.study-tag');
    const untold = await page.$$eval(
      '[data-printed]:not(.source), .workings',
      (found) =>
        found.filter(
          (each) => !(each.closest('.table-room') ?? each).previousElementSibling?.matches('.study-tag'),
        ).length,
    );
    expect(untold).toBe(0);
    expect(tags.length).toBeGreaterThanOrEqual(4);
    for (const tag of tags)
      expect(tag).toMatch(/^As printed, for wind 225°.8.kt, from 1,000.ft, engine idling$/);
    expect(await words(page, '.study-headline')).toEqual([
      expect.stringMatching(/^Set here: wind 225°.5.kt/),
    ]);
    const { height } = planApproach(packet.request).keys.find(({ id }) => id === 'base-key')!;
    const baseKey = Math.round(height / 3.048) * 10;
    expect(await words(page, '.study-detail')).toEqual([
      expect.stringMatching(new RegExp(`base key .* \\(printed ${baseKey}.ft\\)`)),
    ]);
    expect(await words(page, '.study-standing')).toEqual([
      expect.stringMatching(/^Computed on this page for practice/),
    ]);
  });

  it('goes with one button, and leaves the page byte for byte as printed', async () => {
    const page = await open(packet.html);
    const before = await liveParts(page);
    await type(page, 'speed', '5');
    await type(page, 'height', '800');
    await page.select('#study-fault', 'power-off/base-turn-late');
    await settled(page);
    expect((await liveParts(page)) === before).toBe(false);
    await (await page.$('.study button:last-child'))!.click();
    await settled(page);
    expect((await liveParts(page)) === before).toBe(true);
    expect(await words(page, '.study-tag, .study-moved, .study-fault')).toEqual([]);
    expect(await words(page, '.study-headline')).toEqual([
      expect.stringMatching(/^As printed: wind 225°.8.kt/),
    ]);
  });

  it('is not on the paper: whoever prints the page gets the packet', async () => {
    const page = await open(packet.html);
    const before = await liveParts(page);
    await type(page, 'speed', '5');
    const moved = await liveParts(page);
    await page.evaluate('dispatchEvent(new Event("beforeprint"))');
    expect((await liveParts(page)) === before).toBe(true);
    await page.emulateMediaType('print');
    const shown = await page.$$eval('.study, .study-tag', (found) =>
      found.map((each) => getComputedStyle(each).display),
    );
    expect(new Set(shown)).toEqual(new Set(['none']));
    await page.emulateMediaType('screen');
    await page.evaluate('dispatchEvent(new Event("afterprint"))');
    await settled(page);
    expect((await liveParts(page)) === moved).toBe(true);
  });

  it('that cannot be flown says why, and leaves no figure standing', async () => {
    const page = await open(packet.html);
    await type(page, 'height', '1');
    expect(await words(page, '.study-headline')).toEqual(['There is no flight of this setting']);
    expect(await words(page, '.study-detail')).toEqual([
      expect.stringMatching(/a number from 400 to 2000.ft/),
    ]);
    const left = await page.$$eval(
      '[data-live]',
      (found) => found.filter((each) => !each.closest('[data-printed]')).length,
    );
    expect(left).toBe(0);
    expect((await words(page, 'p.study-refusal')).length).toBeGreaterThan(3);
    expect(await words(page, '.masthead .setting')).toEqual([]);
    await page.keyboard.press('Tab');
    await settled(page);
    // Set to the lowest that can be set, and flown: its turn to final is too low.
    expect(await page.$eval('input[type=number][aria-labelledby="study-height"]', (each) => each.value)).toBe(
      '400',
    );
    expect(await words(page, '.study-headline')).toEqual(['This setting is not to be flown']);
  });

  it('that does not reach the spot is not drawn, and says by how much', async () => {
    const page = await open(packet.html);
    await type(page, 'direction', '240');
    await type(page, 'speed', '10');
    await type(page, 'height', '400');
    await page.evaluate('document.querySelector("input[value=stopped]").click()');
    await settled(page);
    const plan = planApproach({
      ...packet.request,
      wind: { from: (240 * Math.PI) / 180, speed: (10 * 1852) / 3600 },
      height: 400 * 0.3048,
      power: 'stopped',
    });
    expect(plan.made).toBe(false);
    const why = saidCautions(plan).find(({ code }) => code === 'beyond-reach')!.message;
    expect(await words(page, '.study-headline')).toEqual(['This setting is not to be flown']);
    expect(wordsOf((await words(page, '.study-detail'))[0]!)).toContain(wordsOf(why));
    expect(await words(page, 'figure.pattern, figure.profile, table.keys')).toEqual([]);
    expect(wordsOf((await words(page, '.lesson p.study-refusal'))[0]!)).toContain(wordsOf(why));
    expect((await words(page, '.packet-cautions'))[0]).toContain('It is not to be flown.');
  });

  it('that is not to be flown has the band above its title, and no figure; back as printed it has none', async () => {
    const page = await open(packet.html);
    expect(await words(page, '.grade-band, .page-band')).toEqual([]);
    // 14 kt across the runway; the Osier 15 has a limit of 9 kt.
    await type(page, 'direction', '330');
    await type(page, 'speed', '14');
    expect(await words(page, '.study-headline')).toEqual(['This setting is not to be flown']);
    const bands = (await words(page, '.grade-band, .page-band')).map(wordsOf);
    expect(bands[0]).toMatch(/^NOT TO BE FLOWN: .*crosswind 14 kt, at most 9 kt/);
    expect(bands[1]).toMatch(/^Not to be flown.*Crosswind 14 kt, at most 9 kt/);
    const first = await page.$$eval('main, .grade-band, .masthead', (found) =>
      found.map((each) => each.className),
    );
    expect(first.slice(0, 2)).toEqual(['grade-band not-to-be-flown', 'masthead']);
    expect(await words(page, 'figure.pattern, figure.profile, table.keys')).toEqual([]);
    expect(await words(page, 'span.study-refusal')).toContain('no figure in this setting');
    expect(wordsOf((await words(page, '.study-detail'))[0]!)).toContain('The crosswind is 14 kt');
    await page.evaluate('[...document.querySelectorAll(".study button")].at(-1).click()');
    await settled(page);
    expect(await words(page, '.grade-band, .page-band')).toEqual([]);
    expect((await words(page, 'table.keys')).length).toBeGreaterThan(0);
  });

  it('beyond a limit of good practice has its band too, and its figures stand', async () => {
    const steep = await build('power-off-180', { change: { bank: (46 * Math.PI) / 180 } });
    expect(wordsOf(steep.html)).toContain('Bank 46°, at most 45°');
    const page = await open(steep.html);
    expect(await words(page, '.study-headline')).toEqual([
      expect.stringMatching(/^As printed, beyond a limit of good practice: /),
    ]);
    await type(page, 'speed', '8');
    expect((await words(page, '.grade-band')).map(wordsOf)).toEqual([
      expect.stringMatching(/^Beyond a limit of good practice.*Bank 46°, at most 45°/),
    ]);
    expect((await words(page, 'table.keys')).length).toBeGreaterThan(0);
  });

  it('leaves a packet that shows a plan not to be flown, and comes back to it with its band', async () => {
    const change = { wind: { from: (330 * Math.PI) / 180, speed: (14 * 1852) / 3600 } };
    const page = await open((await build('power-off-180', { change })).html);
    const before = await words(page, '.grade-band, .page-band');
    expect(wordsOf(before[0]!)).toMatch(/^NOT TO BE FLOWN: /);
    expect((await words(page, 's.not-to-be-flown')).length).toBeGreaterThan(3);
    await type(page, 'speed', '5');
    expect(await words(page, '.page-band, .grade-band.not-to-be-flown, s.not-to-be-flown')).toEqual([]);
    await type(page, 'speed', '14');
    expect(await words(page, '.grade-band, .page-band')).toEqual(before);
    expect((await words(page, 's.not-to-be-flown')).length).toBeGreaterThan(3);
  });

  it('with cautions says how many, and each of them', async () => {
    const page = await open(packet.html);
    await type(page, 'height', '400');
    const cautions = saidCautions(planApproach({ ...packet.request, height: 400 * 0.3048 }));
    expect(cautions.length).toBeGreaterThan(1);
    expect(await words(page, '.study-cautions strong')).toEqual([
      `${cautions.length} cautions of this flight`,
    ]);
    const names = {
      'not-to-be-flown': 'Not to be flown',
      'beyond-good-practice': 'Beyond a limit of good practice',
      'worth-knowing': 'Worth knowing',
    };
    const gravestFirst = Object.keys(names).flatMap((grade) =>
      cautions.filter((each) => each.grade === grade),
    );
    expect((await words(page, '.study-cautions li')).map(wordsOf)).toEqual(
      gravestFirst.map(({ grade, message, source }) =>
        wordsOf(`${names[grade]}: ${message} Limit: ${source}`),
      ),
    );
    await page.waitForFunction(
      `/${cautions.length} cautions/.test(document.querySelector(".study [role=status]").textContent)`,
    );
  });

  it('can be set by keyboard alone, and the focus stays', async () => {
    const page = await open(packet.html);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowRight');
    await settled(page);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowLeft');
    await settled(page);
    expect(await words(page, '.study-headline')).toEqual([
      expect.stringMatching(/^Set here: wind 235°.7.kt/),
    ]);
    expect(await page.evaluate('document.activeElement.type + document.activeElement.value')).toBe('range7');
  });
});

describe('a fault picked on the page', () => {
  it('is drawn dashed over pattern and profile, named, with what it came to', async () => {
    const page = await open(packet.html);
    const strokes = (figure: string) => page.$$eval(`${figure} [stroke-dasharray]`, (found) => found.length);
    const before = [await strokes('figure.pattern'), await strokes('figure.profile')];
    await page.select('#study-fault', 'power-off/base-turn-late');
    await settled(page);
    await page.waitForSelector('#study-fault-flown');
    expect(await strokes('figure.pattern')).toBeGreaterThan(before[0]!);
    expect(await strokes('figure.profile')).toBeGreaterThan(before[1]!);
    for (const figure of ['pattern', 'profile']) {
      expect(await words(page, `figure.${figure} svg`)).toEqual([expect.stringMatching(/Base turn late/)]);
    }
    const row = [...packet.plain.matchAll(/<tr class="flown">[\s\S]*?<\/tr>/g)]
      .map(([found]) => wordsOf(found))
      .find((found) => found.includes('base-turn: 6 s late'))!;
    const [effect] = await words(page, '.study-effect');
    expect(row.endsWith(wordsOf(effect!))).toBe(true);
    // The setting is the printed one: nothing else is touched.
    expect(await words(page, '.study-tag')).toEqual([]);
  });
});

describe('an exercise answered on the page', () => {
  it("shows what the instructor's edition has, and has no answer in it before", async () => {
    const instructors = await build('power-off-180', { edition: 'instructor' });
    const worked = [...instructors.plain.matchAll(/<div class="worked-answer"[\s\S]*?<\/div>/g)].map(
      ([found]) => wordsOf(found),
    );
    expect(worked.length).toBeGreaterThan(1);
    for (const each of worked) expect(wordsOf(packet.html).includes(each)).toBe(false);
    expect(/class="(?:worked-answer|right-choice)/.test(packet.html)).toBe(false);
    const page = await open(packet.html);
    const exercises = await page.$$('.exercise');
    expect(exercises.length).toBe(worked.length);
    for (const [place, exercise] of exercises.entries()) {
      const right = 'abcd'.indexOf(/([abcd]) is right: /.exec(worked[place]!)![1]!);
      const choices = await exercise.$$('.choices input');
      const verdict = async () => {
        await exercise.waitForSelector('.study-verdict');
        return exercise.$eval('.study-verdict', (each) => each.textContent);
      };
      await choices[(right + 1) % 4]!.evaluate((each) => (each as HTMLInputElement).click());
      expect(await verdict()).toMatch(
        new RegExp(`^Not right: you chose \\w, and ${'abcd'[right]} is right\\.$`),
      );
      await choices[right]!.evaluate((each) => (each as HTMLInputElement).click());
      expect(await verdict()).toBe(`Right: ${'abcd'[right]}.`);
      const answer = await exercise.$$eval('.study-answer > p:not(.study-verdict)', (lines) =>
        lines.map((each) => each.textContent).join(' '),
      );
      expect(wordsOf(answer)).toBe(worked[place]);
    }
  });
});

describe('the page around the figures', () => {
  it('is no wider than a phone, with its controls at the foot behind a button', async () => {
    const page = await open(packet.html, 390);
    expect(
      await page.evaluate('document.documentElement.scrollWidth - window.innerWidth'),
    ).toBeLessThanOrEqual(0);
    expect(await page.$eval('.study-controls', (each) => getComputedStyle(each).display)).toBe('none');
    const button = (await page.$('.study-open'))!;
    await button.click();
    expect(await button.evaluate((each) => each.getAttribute('aria-expanded'))).toBe('true');
    await type(page, 'speed', '5');
    await page.select('#study-fault', 'power-off/base-turn-late');
    await settled(page);
    expect(
      await page.evaluate('document.documentElement.scrollWidth - window.innerWidth'),
    ).toBeLessThanOrEqual(0);
    const foot = await page.$eval(
      '.study',
      (each) => window.innerHeight - each.getBoundingClientRect().bottom,
    );
    expect(Math.abs(foot)).toBeLessThan(1);
  });

  it('lets no other script run, and said nothing of a mistake in all of this', async () => {
    expect(complaints).toEqual([]);
    const page = await open(packet.html.replace('</h1>', '</h1><script>window.planted = 1</script>'));
    await page.evaluate(`(() => {
      const script = document.createElement('script');
      script.textContent = 'window.planted = 2';
      document.body.append(script);
      const image = document.createElement('img');
      image.setAttribute('onerror', 'window.planted = 3');
      const failed = new Promise((done) => image.addEventListener('error', done));
      image.src = 'data:,';
      document.body.append(image);
      return failed.then(() => undefined);
    })()`);
    expect(await page.evaluate('window.planted')).toBeUndefined();
    await expect.poll(() => complaints.join('\n')).toMatch(/Content Security Policy/);
  });
});
