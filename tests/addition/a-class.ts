import { expect } from 'vitest';
import type { Addition } from './addition.ts';

/** Its row of terms and its name; an aircraft of it is a file. */
export const aircraftClass: Addition = {
  name: 'a class of aircraft',
  add: async (house) => {
    await house.insert(
      'src/flight/terms/aircraft-class.ts',
      /glider: \{.*\n/,
      '  gyroplane: { hasOnePolar: false, touchesInCrab: false },\n',
    );
    await house.insert(
      'src/words/aircraft/class-names.ts',
      /glider: 'glider',\n/,
      "  gyroplane: 'autorotating',\n",
    );
    const osier = await house.read('lessons/fleet/osier-15.yaml');
    const crack = osier
      .replace('name: Osier 15', 'name: Crack 9')
      .replace('class: weight-shift', 'class: gyroplane');
    await house.write('lessons/fleet/crack-9.yaml', crack);
  },
  mayMake: ['lessons/fleet/crack-9.yaml'],
  mayChange: { 'src/flight/terms/aircraft-class.ts': 1, 'src/words/aircraft/class-names.ts': 1 },
  lessons: {
    'for-each': '---\ntitle: For each\n---\n\n:::for{class=gyroplane}\nThe rotor turns.\n:::\n\n::keys\n',
  },
  check: async ({ house, packet, words }) => {
    expect(await packet('for-each')).not.toContain('The rotor turns.');
    const build = await house.chalkwing([
      'build',
      ...['for-each', '--aircraft', 'crack-9', '--date', '2031-05-06', '--browser', house.path('none')],
    ]);
    const html = await house.read('dist/packets/for-each/crack-9.html').catch(() => {
      throw new Error(build.out);
    });
    expect(html).toContain('The rotor turns.');
    expect(html).toContain('autorotating');
    expect(JSON.stringify(words)).toContain('gyroplane');
    expect(await house.read('schemas/aircraft.schema.json')).toContain('"gyroplane"');
    expect(await house.read('docs/school-files.md')).toContain('gyroplane');
  },
};
