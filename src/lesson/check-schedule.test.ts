import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { defineComponent } from './component.ts';
import { parseLesson } from './parse-lesson.ts';

const schedule = defineComponent<never, z.ZodType>({
  name: 'schedule',
  form: 'container',
  summary: 'How the time is spent.',
  attributes: z.strictObject({}),
  example: ':::schedule',
  render: ({ children }) => children,
});

function saidOf(items: string, minutes = 'minutes: 75\n'): string[] {
  const file = new VFile(`---\ntitle: T\n${minutes}---\n\n:::schedule\n${items}\n:::\n`);
  parseLesson(file, [schedule]);
  return file.messages.map(({ line, column, reason, fatal }) => `${line}:${column} ${fatal} ${reason}`);
}

describe("a schedule's minutes", () => {
  it('that do not add up to those of the front matter are an error with the sum', () => {
    expect(saidOf('- 20 min: briefing\n- 40 min: flight')).toEqual([
      '6:1 true The schedule adds up to 60 min, and the front matter says `minutes: 75`: make the two agree',
    ]);
  });

  it('are counted over several lists and kinds of text', () => {
    expect(saidOf('1. 20 min: **briefing**\n\n2. 40min: flight\n\nThen:\n\n- 15 min: talk')).toEqual([]);
  });

  it('are not compared where the front matter gives none, or an item has none', () => {
    expect(saidOf('- 20 min: briefing', '')).toEqual([]);
    expect(saidOf('- briefing\n- 40 min: flight')).toEqual([]);
  });
});
