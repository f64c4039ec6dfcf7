import { didYouMean } from '../messages/nearest-name.ts';
import type { SchoolFolder } from './school-folder.ts';
import type { DataPath, YamlSource } from './yaml-source.ts';

/** Things of a kind that can be named: what there are, what they are called, and where they lie. */
interface Named {
  readonly known: readonly string[];
  readonly what: string;
  readonly where: string;
}

/** Every aircraft, airfield, runway and lesson that the school's file names must exist. */
export function checkNames(source: YamlSource, beside: SchoolFolder): void {
  const defaults = part(source.data, 'defaults');
  const handbook = part(source.data, 'handbook');
  const { folder, aircraftIds, airfieldIds, lessonIds } = beside;

  const check = (name: unknown, { known, what, where }: Named, path: DataPath) => {
    if (typeof name !== 'string' || name.trim() === '' || known.includes(name.trim())) return;
    const reason = `There is no ${what} \`${name.trim()}\` in ${where}${didYouMean(name, known)}${there(known)}`;
    source.report(reason, 'unknown-name', path);
  };

  const fleet = { known: aircraftIds, what: 'aircraft', where: `${folder}/fleet` };
  const airfields = { known: airfieldIds, what: 'airfield', where: `${folder}/airfields` };
  const lessons = { known: lessonIds, what: 'lesson', where: folder };
  check(defaults.aircraft, fleet, ['defaults', 'aircraft']);
  check(defaults.airfield, airfields, ['defaults', 'airfield']);
  const airfield = beside.airfields.get(text(defaults.airfield));
  if (airfield) {
    const known = airfield.runways.map((runway) => runway.name);
    const where = `${folder}/airfields/${text(defaults.airfield)}.yaml`;
    check(defaults.runway, { known, what: 'runway', where }, ['defaults', 'runway']);
  }
  const aircraft = beside.fleet.get(text(defaults.aircraft));
  if (aircraft && !aircraft.glide.stopped && text(defaults.power) === 'stopped') {
    const reason = `\`${aircraft.name}\` has no glide with the engine stopped: write \`power: idle\`, or add \`stopped\` to its \`glide\``;
    source.report(reason, 'cross-check', ['defaults', 'power']);
  }
  items(handbook.aircraft).forEach((id, place) => {
    check(id, fleet, ['handbook', 'aircraft', place]);
  });
  items(handbook.chapters).forEach((id, place) => {
    check(id, lessons, ['handbook', 'chapters', place]);
  });
}

/** " (there are: a, b)". */
function there(known: readonly string[]): string {
  return known.length === 0 ? ' (there is none yet)' : ` (there are: ${known.join(', ')})`;
}

function part(data: unknown, key: string): Record<string, unknown> {
  const found =
    typeof data === 'object' && data !== null ? (data as Record<string, unknown>)[key] : undefined;
  return typeof found === 'object' && found !== null ? (found as Record<string, unknown>) : {};
}

function items(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function text(value: unknown): string {
  return typeof value === 'string' ? value.trim() : '';
}
