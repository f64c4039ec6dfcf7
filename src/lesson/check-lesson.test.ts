import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { checkKeysExplained } from './check-keys-explained.ts';
import { checkPlanParts } from './check-plan-parts.ts';
import { checkTypedFigures, type KnownFigure } from './check-typed-figures.ts';
import { trialFrontMatter, tryBody } from './trial-lesson.ts';

const words = (file: VFile) => file.messages.map(({ line, column, reason }) => `${line}:${column} ${reason}`);
/** A lesson as read, and its source with no messages on it yet. */
const read = (body: string) => {
  const { lesson } = tryBody(body, {});
  return { lesson, file: new VFile({ path: 'trial.md', value: trialFrontMatter + body }) };
};

describe('the parts of a lesson plan', () => {
  const missing = (body: string) => {
    const { lesson, file } = read(body);
    checkPlanParts(lesson, file);
    return words(file);
  };

  it('that are missing are named, as a warning', () => {
    const [message, ...others] = missing(':::objective\na\n:::\n\n:::standards\nb\n:::\n');
    expect(others).toEqual([]);
    expect(message).toMatch(
      /^1:1 This lesson plan has no `:::prior-knowledge`, `:::equipment`, `:::schedule`/,
    );
    expect(message).not.toMatch(/:::objective|:::standards/);
  });

  it('may stand under their headings', () => {
    const headings = ['Prior knowledge', 'Equipment', 'Schedule', 'Elements', 'What the instructor does'];
    const body = [
      ...headings,
      'What the student does',
      'Risks and how they are managed',
      'Completion standards',
    ]
      .map((heading) => `## ${heading}\n\na\n`)
      .join('\n');
    expect(missing(`${body}\n:::objective\na\n:::\n`)).toEqual([]);
  });
});

describe('the key positions that a lesson draws', () => {
  const unsaid = (body: string, keys: readonly string[]) => {
    const { lesson, file } = read(body);
    checkKeysExplained(lesson, keys, file);
    return words(file);
  };

  it('and never explains are named at the drawing, the touchdown aside', () => {
    const body = '::pattern\n\nAt :key[downwind-key] close the throttle.\n';
    expect(unsaid(body, ['downwind-key', 'overhead', 'final', 'touchdown'])).toEqual([
      '4:1 `pattern` draws `overhead` and `final`, and the text never says what is done there: explain it with `:key[overhead]`',
    ]);
  });

  it('are of no account where nothing is drawn or all are explained', () => {
    expect(unsaid('Words.\n', ['final'])).toEqual([]);
    expect(unsaid('::pattern\n\n:key[final]\n', ['final', 'touchdown'])).toEqual([]);
  });
});

describe('a figure typed by hand', () => {
  const foot = 0.3048;
  const knot = 1852 / 3600;
  const known = (
    kind: KnownFigure['kind'],
    value: number,
    step: number,
    directive: string,
    printed = Math.round(value / step) * step,
  ): KnownFigure => ({ kind, value, step, printed, directive });
  const figures: KnownFigure[] = [
    known('height', 1003 * foot, 10 * foot, ':key[downwind-key]{show=height}'),
    known('height', 301 * foot, 10 * foot, ':key[final]{show=height}'),
    known('height', 731 * foot, 10 * foot, ':gate[downwind-key]{edge=low}', 740 * foot),
    known('distance', 496, 10, ':key[downwind-key]{show=across}'),
    known('speed', 41.2 * knot, knot, ':aircraft[best-glide]'),
    known('speed', 0, knot, ':wind[speed]'),
  ];
  const typed = (body: string, units = { height: 'ft', distance: 'm' }) => {
    const { lesson, file } = read(body);
    checkTypedFigures(lesson, figures, units, file);
    return words(file);
  };

  it('that agrees with one of the flight, as the page rounds it, is a warning that names the directive', () => {
    expect(typed('From 1,000 ft, 500 m out, at 41 kt.\n')).toEqual([
      '4:6 `1,000 ft` is typed; `:key[downwind-key]{show=height}` would follow the aircraft',
      '4:16 `500 m` is typed; `:key[downwind-key]{show=across}` would follow the aircraft',
      '4:30 `41 kt` is typed; `:aircraft[best-glide]` would follow the aircraft',
    ]);
  });

  it('that agrees with an edge or a limit as it is printed, to its safe side, is one too', () => {
    expect(typed('Not below 740 ft.\n')).toEqual([
      '4:11 `740 ft` is typed; `:gate[downwind-key]{edge=low}` would follow the aircraft',
    ]);
    expect(typed('Not below 720 ft.\n')).toEqual([]);
  });

  it.each(['1000ft', '1,000 feet', '**1000 ft**', '306 m up', 'a 1000-ft key', '0.5 km'])(
    'is found as %j, whatever its unit',
    (text) => expect(typed(`At ${text}.\n`, { height: 'ft', distance: 'ft' })).toHaveLength(1),
  );

  it.each([
    'At 990 ft or 1,010 ft.',
    'The turn to final is complete by 300 ft.',
    'Within 200 ft, 50 ft over it.',
    'Hold it within 41 kt.',
    '`1,000 ft`',
    '```\n1,000 ft\n```',
    'A wind of 210/41kt, 0 kt, 1000 ft/min, 6:1000 m.',
    'At :key[final]{show=height}.',
    'The table 500-1000 ft.',
  ])('is not seen in %j', (text) => expect(typed(`${text}\n`)).toEqual([]));

  it('takes a length in the unit of heights for a height', () => {
    expect(typed('It is 496 m up and 1627 ft out.\n')).toHaveLength(1);
  });

  it('that a directive of the lesson is given is the choice of the lesson', () => {
    expect(typed('From 1,000 ft.\n\n::pattern{caption=1000ft}\n')).toEqual([]);
  });
});
