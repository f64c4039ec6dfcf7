import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../src/flight/numerics/random.ts';
import { contextOf, feetAndKnots, flyTrial, renderBody } from '../trial-packet.ts';
import { shuffledChoices } from './exercise.ts';
import { exerciseItem } from './exercise-item.ts';
import { wrongFigures } from './figure-choices.ts';
import { questionSetting } from './question-setting.ts';
import { stallInBank } from './stall-in-bank.ts';

// An airfield that is not the school's has no fields to ask about: those questions take a second each.
const plan = flyTrial();
const elsewhere = { ...plan.airfield, name: 'Elsewhere' };
const flown = flyTrial({ airfield: elsewhere });
const page = (edition: 'student' | 'instructor', line = '::exercises{count=5 seed=11}') =>
  renderBody(line, flown, feetAndKnots, edition);

describe('::exercises', () => {
  const student = page('student');
  const instructor = page('instructor');
  const count = (html: string, piece: RegExp) => html.match(piece)?.length ?? 0;

  it('prints as many numbered questions as asked for, each with four choices', () => {
    expect(student.messages).toEqual([]);
    expect(count(student.html, /<li class="exercise">/g)).toBe(5);
    expect(count(student.html, /<ol class="choices[^>]*type="a"/g)).toBe(5);
    for (const list of student.html.match(/<ol class="choices.*?<\/ol>/gs)!)
      expect(count(list, /<li>/g)).toBe(4);
  });

  it('gives the student lines to write on, and no answer', () => {
    expect(count(student.html, /class="writing-lines"/g)).toBe(5);
    expect(student.html).not.toMatch(/worked-answer|right-choice| [a-d] is right|Worked/);
  });

  it('gives the instructor the worked answer, and says in words which choice is right', () => {
    expect(instructor.html).not.toContain('writing-lines');
    expect(count(instructor.html, /class="worked-answer"/g)).toBe(5);
    expect(count(instructor.html, /<b class="right-choice"> – right<\/b>/g)).toBe(5);
    for (const item of instructor.html.split('<li class="exercise">').slice(1)) {
      const choices = [.../<ol class="choices.*?<\/ol>/s.exec(item)![0].matchAll(/<li>(.*?)<\/li>/gs)];
      const right = choices.findIndex(([, text]) => text!.includes('– right'));
      const text = choices[right]![1]!.replace(/<b.*/, '');
      expect(item).toContain(`<b>${'abcd'[right]} is right: </b>${text}</p>`);
    }
  });

  it('asks the same in both editions, in rooms of the same height', () => {
    const questions = (html: string) =>
      [...html.matchAll(/<li class="exercise"><p>(.*?)<\/p>/gs)].map(([, text]) => text);
    const rooms = (html: string) => [...html.matchAll(/style="--rules:(\d)"/g)].map(([, rules]) => rules);
    expect(questions(instructor.html)).toEqual(questions(student.html));
    expect(rooms(instructor.html)).toEqual(rooms(student.html));
    expect(rooms(student.html).every((rules) => Number(rules) >= 2)).toBe(true);
    expect(count(student.html, /<span><\/span>/g)).toBe(
      rooms(student.html).reduce((sum, rules) => sum + Number(rules), 0),
    );
  });

  it('asks the same for the same seed, and otherwise for another', () => {
    expect(page('student').html).toBe(student.html);
    expect(page('student', '::exercises{count=5 seed=12}').html).not.toBe(student.html);
  });

  it('says what is wrong with a count or a seed', () => {
    expect(page('student', '::exercises{count=9}').messages).toEqual([
      expect.stringMatching(
        /^4:\d+ `count` cannot be `9`: `9` is not a whole number from 1 to 8: write one such as `4`/,
      ),
    ]);
    expect(page('student', '::exercises{seed=lucky}').messages).toEqual([
      expect.stringMatching(/^4:\d+ `seed` cannot be `lucky`: `lucky` is not a number/),
    ]);
  });

  it('prints its figures in the units of the page', () => {
    const metric = renderBody('::exercises{count=8 seed=2}', flown, {
      height: 'm',
      distance: 'm',
      speed: 'km/h',
    });
    expect(metric.messages).toEqual([]);
    expect(metric.html).not.toMatch(/\d (?:ft|kt)\b/);
    expect(metric.html).toMatch(/\d km\/h/);
  });
});

describe('an exercise', () => {
  it('is left out where too few wrong choices differ from the right one', () => {
    const wrong = [
      { text: '40 kt', fault: 'one' },
      { text: '41 kt', fault: 'two' },
      { text: '41 kt', fault: 'three' },
    ];
    const posed = { question: '?', right: '40 kt', wrong, working: [] };
    expect(shuffledChoices(posed, randomFrom(1))).toBeUndefined();
  });

  it('has no wrong figure that could be taken for the right one, or for another', () => {
    const faulty = [100, 104, 130, 135, -20, Number.NaN].map((value) => ({ value, fault: 'a fault' }));
    expect(wrongFigures(100, faulty, 10, String).map(({ text }) => text)).toEqual(['130']);
  });

  it('is one item of a list, its letters running a to d', () => {
    const setting = questionSetting(contextOf(plan));
    const drawn = [1, 2, 3, 4]
      .map((seed) => stallInBank(setting, randomFrom(seed)))
      .find((each) => each !== undefined)!;
    expect(exerciseItem(drawn, contextOf(plan)).tagName).toBe('li');
  });
});
