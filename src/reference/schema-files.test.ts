import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { checkYaml } from '../school/check-yaml.ts';
import { lessonHead, schoolFiles } from './definitions.ts';
import { schemaFiles } from './schema-files.ts';

type Kind = keyof typeof schoolFiles | 'lesson';

const lessons = fileURLToPath(new URL('../../lessons/', import.meta.url));
const text = (path: string) => readFileSync(lessons + path, 'utf8');
const within = (folder: string, ending: string) =>
  readdirSync(lessons + folder)
    .filter((name) => name.endsWith(ending))
    .map((name) => folder + name);
const headOf = (path: string) => /^---\n(.*?)^---$/ms.exec(text(path))![1]!;

const ajv = new Ajv({
  strict: true,
  allowUnionTypes: true,
  allErrors: true,
  strictTypes: false,
  strictRequired: false,
});
const validators = new Map(
  schemaFiles().map(({ path, content }) => [
    /schemas\/(\w+)\.schema\.json/.exec(path)![1] as Kind,
    ajv.compile(JSON.parse(content)),
  ]),
);

/** What an editor says about a file: it reads YAML with its own types. */
function editorAccepts(kind: Kind, yaml: string): boolean {
  return validators.get(kind)!(parse(yaml));
}

function checkAccepts(kind: Kind, yaml: string): boolean {
  const { definition } = { ...schoolFiles, lesson: lessonHead }[kind];
  const file = new VFile({ value: yaml });
  return checkYaml(file, definition)?.value !== undefined;
}

const sound: Readonly<Record<Kind, string>> = {
  aircraft: text('fleet/osier-15.yaml'),
  airfield: text('airfields/fallow-reach.yaml'),
  faults: text('faults/power-off.yaml'),
  handbooks: text('handbooks.yaml'),
  school: text('school.yaml'),
  lesson: headOf('power-off-180.md'),
};

describe('the schemas', () => {
  it('are one for each kind of file', () => {
    expect([...validators.keys()]).toEqual([
      'aircraft',
      'airfield',
      'faults',
      'handbooks',
      'school',
      'lesson',
    ]);
  });

  it.each<[Kind, string]>([
    ...within('fleet/', '.yaml').map((path): [Kind, string] => ['aircraft', path]),
    ...within('airfields/', '.yaml').map((path): [Kind, string] => ['airfield', path]),
    ...within('faults/', '.yaml').map((path): [Kind, string] => ['faults', path]),
    ['handbooks', 'handbooks.yaml'],
    ['school', 'school.yaml'],
    ...within('', '.md').map((path): [Kind, string] => ['lesson', path]),
  ])('take as %s the demonstration file %s', (kind, path) => {
    const yaml = kind === 'lesson' ? headOf(path) : text(path);
    expect(editorAccepts(kind, yaml), JSON.stringify(validators.get(kind)!.errors)).toBe(true);
  });

  const changes: readonly (readonly [Kind, string | RegExp, string])[] = [
    ['aircraft', 'ratio: 6.4', 'ratio: "6.4:1"'],
    [
      'aircraft',
      '{ speed: 42 kt, ratio: 6.4 }',
      '{ points: [{ speed: 36 kt, sink: 620 ft/min }, { speed: 42 kt, sink: 640 ft/min }, { speed: 52 kt, sink: 900 ft/min }] }',
    ],
    ['aircraft', 'landing-roll: 90 m', 'landing-roll: 1,000FT'],
    ['aircraft', /^round-out:.*\n/m, ''],
    ['aircraft', 'flown: 365 kg', 'flown: 365 kg, most: 450 kg, least: 600 LB'],
    ['aircraft', 'crosswind: 9 kt', 'crosswind: 9 kt, tailwind: 0 kt'],
    ['school', 'paper: A4', 'paper: A4\nlimits: { tailwind: 5 kt }'],
    ['aircraft', 'name: Osier 15', 'name: 15'],
    ['airfield', 'variation: 2 deg W', 'variation: 2°w'],
    ['airfield', 'name: "24"', 'name: 24'],
    ['airfield', /^fields:(.|\n)*/m, ''],
    ['faults', 'fault: Base turn late', 'class: weight-shift glider\n    fault: Base turn late'],
    ['school', 'approach: "180"', 'approach: 180'],
    ['school', 'wind: 210/12kt', 'wind: calm'],
    ['school', /^minimums:.*\n/m, ''],
    ['lesson', /needs:.*/, 'needs: judging-the-glide'],
    ['lesson', 'minutes: 75', 'minutes: "75"\nclass: [glider, three-axis]'],
    ['lesson', /approach: "180"\nwind: .*/, 'approach: spiral\nwind: 210°/12 kt'],
  ];
  it.each(changes)('take, as the check does, in %s: %s as %s', (kind, from, to) => {
    const yaml = change(sound[kind], from, to);
    expect(checkAccepts(kind, yaml)).toBe(true);
    expect(editorAccepts(kind, yaml), JSON.stringify(validators.get(kind)!.errors)).toBe(true);
  });

  const mistakes: readonly (readonly [Kind, string | RegExp, string])[] = [
    ['aircraft', 'landing-roll: 90 m', 'landing-rol: 90 m'],
    ['aircraft', 'landing-roll: 90 m', 'landing-roll: 90'],
    ['aircraft', 'landing-roll: 90 m', 'landing-roll: 90 kt'],
    ['aircraft', 'landing-roll: 90 m', 'landing-roll: -90 m'],
    ['aircraft', 'landing-roll: 90 m', 'landing-roll:'],
    ['aircraft', 'landing-roll: 90 m', 'landing-roll: { is: 90 m }'],
    ['aircraft', /^landing-roll.*\n/m, ''],
    ['aircraft', 'flown: 365 kg', 'flown: 365 kg, most: 450'],
    ['aircraft', 'crosswind: 9 kt', 'crosswind: 9 kt, tailwind: 5 m'],
    ['school', 'paper: A4', 'paper: A4\nlimits: { tailwind: 5 }'],
    ['school', 'paper: A4', 'paper: A4\nlimits: { wind: 5 kt }'],
    ['aircraft', 'class: weight-shift', 'class: trike'],
    ['aircraft', 'ratio: 6.4', 'ratio: 0.4'],
    ['aircraft', 'ratio: 6.4', 'ratio: steep'],
    ['aircraft', 'ratio: 6.4', 'glide: 6.4'],
    ['aircraft', 'ratio: 6.4 }', 'ratio: 6.4, points: [] }'],
    ['aircraft', '{ speed: 42 kt, ratio: 6.4 }', '{ speed: 42 kt }'],
    ['aircraft', 'load-factor: 1.2', 'load-factor: 12'],
    ['aircraft', /engine-failure:(.|\n)*/, 'engine-failure: Fly the glide speed.'],
    ['aircraft', 'roll-rate: 20 deg/s', 'roll-rate: 20 deg'],
    ['airfield', 'variation: 2 deg W', 'variation: -2 deg'],
    ['airfield', 'longitude: 11 deg W', 'longitude: 11 deg N'],
    ['airfield', 'heading: 238 deg', 'heading: 238'],
    ['airfield', 'circuit: left', 'circuit: leftish'],
    ['airfield', /^runways:(.|\n)*/m, 'runways: []'],
    ['airfield', 'across: 0 m, width: 60 m', 'across: 0 m'],
    ['faults', 'id: glide-slow', 'id: Glide slow'],
    ['faults', 'class: weight-shift', 'class: trike'],
    ['faults', 'name: ', 'title: '],
    ['school', 'paper: A4', 'paper: A5'],
    ['school', 'wind: 210/12kt', 'wind: 12kt'],
    ['school', 'final-turn: 300 ft', 'final-turn: 300'],
    ['school', 'final-turn: 300 ft', 'last-turn: 300 ft'],
    ['school', 'height: ft', 'height: feet'],
    ['lesson', /^title.*\n/m, ''],
    ['lesson', 'title:', 'Title:'],
    ['lesson', 'approach: "180"', 'approach: 270'],
    ['lesson', 'minutes: 75', 'minutes: 7.5'],
    ['lesson', 'minutes: 75', 'minutes: 75\nclass: [trike]'],
    ['lesson', 'minutes: 75', 'minutes: 75\nheight: 1000'],
    ['lesson', /needs:.*/, 'needs: []'],
  ];
  it.each(mistakes)('refuse, as the check does, in %s: %s as %s', (kind, from, to) => {
    const yaml = change(sound[kind], from, to);
    expect(checkAccepts(kind, yaml)).toBe(false);
    expect(editorAccepts(kind, yaml)).toBe(false);
  });

  it('say of every key what it is', () => {
    const bare = schemaFiles().flatMap(({ path, content }) => keysWithout(JSON.parse(content), path));
    expect(bare).toEqual([]);
  });
});

function change(yaml: string, from: string | RegExp, to: string): string {
  const changed = yaml.replace(from, to);
  expect(changed).not.toBe(yaml);
  return changed;
}

interface Described {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Described>>;
  readonly items?: Described;
}

function keysWithout({ properties = {}, items }: Described, path: string): string[] {
  const here = Object.entries(properties).flatMap(([key, schema]) => [
    ...(/^[A-Z`]/.test(schema.description ?? '') ? [] : [`${path} ${key}`]),
    ...keysWithout(schema, `${path} ${key}`),
  ]);
  return items ? [...here, ...keysWithout(items, path)] : here;
}
