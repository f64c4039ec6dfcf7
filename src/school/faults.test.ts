import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { parseFaults } from './faults.ts';

const whole = `name: Faults of the trial
source: Invented for the test.
faults:
  - id: slow
    fault: Too slow
    sign: It is quiet.
    cause: Stretching the glide.
    recovery: Lower the nose.
    prevent: Say the speed.
    class: three-axis glider
    fly: "glide speed: -15 %"
  - id: late
    fault: Too late
    sign: The spot is far behind.
    cause: Eyes inside.
    recovery: Turn now.
    prevent: Look early.
`;

function read(text: string) {
  const file = new VFile({ path: 'trial.yaml', value: text });
  const value = parseFaults(file);
  return { value, found: file.messages.map(({ line, column, reason }) => `${line}:${column} ${reason}`) };
}

describe('a file of faults', () => {
  it('is read with its rows in order, and the classes that a row is for', () => {
    const { value, found } = read(whole);
    expect(found).toEqual([]);
    expect(value!.name).toBe('Faults of the trial');
    expect(value!.faults.map(({ id }) => id)).toEqual(['slow', 'late']);
    expect(value!.faults[0]).toMatchObject({
      class: ['three-axis', 'glider'],
      fly: { written: 'glide speed: -15 %', change: { kind: 'glide-speed', factor: 0.85 } },
    });
    expect(value!.faults[1]).not.toHaveProperty('class');
  });

  it('says where something is missing, and what to write', () => {
    const { value, found } = read(whole.replace('    cause: Eyes inside.\n', ''));
    expect(value).toBeUndefined();
    expect(found).toEqual([
      expect.stringMatching(/^\d+:\d+ `cause` in `faults` 2 is missing: write it as `cause: /),
    ]);
  });

  it('names the nearest key and class', () => {
    expect(read(whole.replace('prevent: Look', 'prevnt: Look')).found.join('\n')).toMatch(
      /17:5 `prevnt` is not a key of `faults` 2; did you mean `prevent`\?/,
    );
    expect(read(whole.replace('three-axis glider', 'three-axes')).found).toEqual([
      expect.stringMatching(
        /^10:12 `class` in `faults` 1: `three-axes` is none of .*did you mean `three-axis`\?/,
      ),
    ]);
  });

  it('takes one id for rows of different classes, and for no two that an aircraft has both of', () => {
    const shared = whole.replace('id: late', 'id: slow');
    const withClass = (name: string) =>
      shared.replace('    fault: Too late', `    class: ${name}\n    fault: Too late`);
    expect(withClass('weight-shift')).not.toBe(shared);
    expect(read(withClass('weight-shift')).found).toEqual([]);
    expect(read(withClass('weight-shift glider')).found).toHaveLength(1);
  });

  it('refuses a second row with the same id, an id that is no word, and a list without a row', () => {
    expect(read(whole.replace('id: late', 'id: slow')).found).toEqual([
      '12:9 `id` in `faults` 2: `slow` is the id of row 1 already; two rows may share one where each has a `class` of its own',
    ]);
    expect(read(whole.replace('id: late', 'id: Too late')).found).toEqual([
      expect.stringMatching(/^12:9 .*`Too late` cannot be an id/),
    ]);
    expect(read('name: a\nsource: b\nfaults: []\n').found).toEqual([
      expect.stringMatching(/^3:9 .*the list needs at least 1/),
    ]);
    expect(read('name: a\nsource: b\nfaults: nothing\n').found).toEqual([
      expect.stringMatching(/^3:9 .*here belongs a list/),
    ]);
  });
});
