import { expect } from 'vitest';
import { wordsOf } from '../packet-school.ts';
import type { Addition } from './addition.ts';

const method = `import { changed } from '../../terms/fault.ts';
import type { FaultMethod } from '../fault-method.ts';
import { atSpeed } from '../parts.ts';

export const patternSpeed: FaultMethod<'pattern-speed'> = {
  madeOn: 'downwind',
  make: (parts, { amount }) => {
    const eas = (planned: number) => changed(planned, amount);
    return { ...parts, start: { ...parts.start, eas: eas(parts.start.eas) }, legs: atSpeed(parts.legs, eas) };
  },
};
`;

const table = `name: A trial
source: Invented for a test.
faults:
  - id: hurried
    fault: Hurried pattern
    sign: Loud air on downwind.
    cause: The bar held in.
    recovery: Bar out to the glide speed.
    prevent: Say the speed at each key.
    fly: "pattern speed: +12 kt"
`;

const lesson = `---
title: In a hurry
wind: 210/6kt
---

::pattern{faults=trial/hurried}

::faults{from=trial}
`;

/** Its file and its row; what may be changed by it, and how an author writes it. */
export const fault: Addition = {
  name: 'a fault',
  add: async (house) => {
    await house.write('src/flight/faults/kinds/pattern-speed.ts', method);
    await house.insert(
      'src/flight/terms/fault.ts',
      /kind: 'touchdown-drift' \}(?=;)/,
      "\n  /** Airspeed up to final, m/s EAS. */\n  | { readonly kind: 'pattern-speed'; readonly amount: Amount }",
    );
    const list = 'src/flight/faults/list.ts';
    await house.insert(
      list,
      /(?=import \{ powerStopped \})/,
      "import { patternSpeed } from './kinds/pattern-speed.ts';\n",
    );
    await house.insert(list, /'touchdown-drift': touchdownDrift,\n/, "  'pattern-speed': patternSpeed,\n");
    await house.insert(
      'src/school/fly-text.ts',
      /(?=\n {2}'touchdown-drift': \[)/,
      "\n  'pattern-speed': [\n    more('pattern-speed', { key: 'pattern speed', example: '+12 kt', does: 'the pattern is flown faster' }, 'speed', '40 kt'),\n  ],",
    );
    await house.write('lessons/faults/trial.yaml', table);
  },
  mayMake: ['src/flight/faults/kinds/pattern-speed.ts', 'lessons/faults/trial.yaml'],
  mayChange: {
    'src/flight/terms/fault.ts': 3,
    'src/flight/faults/list.ts': 2,
    'src/school/fly-text.ts': 2,
  },
  lessons: { 'in-a-hurry': lesson },
  check: async ({ house, packet, words }) => {
    const html = await packet('in-a-hurry');
    const text = wordsOf(html);
    // Faster than the best glide it falls short, and that is seen at a key, drawn and told.
    expect(text).toMatch(/Hurried pattern.*The wheels touch [\d,]+ m short/);
    const drawn = /Fault flown over it: [^<]*/i.exec(html)?.[0];
    expect(drawn).toMatch(/hurried pattern, [\d,]+\sm short/i);
    // The study page can fly it.
    expect(html.includes('"kind":"pattern-speed"')).toBe(true);
    expect(JSON.stringify(words.flies)).toContain('pattern speed: +12 kt');
    expect(await house.read('docs/school-files.md')).toContain('pattern speed: +12 kt');
  },
};
