import { didYouMean } from '../messages/nearest-name.ts';
import type { SchoolFolder } from './school-folder.ts';
import type { DataPath, YamlSource } from './yaml-source.ts';

/** Every aircraft, airfield, runway and lesson that the school's file names must exist. */
export function checkNames(source: YamlSource, beside: SchoolFolder): void {
  const defaults = part(source.data, 'defaults');
  const handbook = part(source.data, 'handbook');
  const { folder, aircraftIds, airfieldIds, lessonIds } = beside;

  const check = (name: unknown, known: readonly string[], what: string, where: string, path: DataPath) => {
    if (typeof name !== 'string' || name.trim() === '' || known.includes(name.trim())) return;
    const reason = `There is no ${what} \`${name.trim()}\` in ${where}${didYouMean(name, known)}${there(known)}`;
    source.report(reason, 'unknown-name', path);
  };

  check(defaults.aircraft, aircraftIds, 'aircraft', `${folder}/fleet`, ['defaults', 'aircraft']);
  check(defaults.airfield, airfieldIds, 'airfield', `${folder}/airfields`, ['defaults', 'airfield']);
  const airfield = beside.airfields.get(text(defaults.airfield));
  if (airfield) {
    const runways = airfield.runways.map((runway) => runway.name);
    check(defaults.runway, runways, 'runway', `${folder}/airfields/${text(defaults.airfield)}.yaml`, [
      'defaults',
      'runway',
    ]);
  }
  const aircraft = beside.fleet.get(text(defaults.aircraft));
  if (aircraft && !aircraft.glide.stopped && text(defaults.power) === 'stopped') {
    const reason = `\`${aircraft.name}\` has no glide with the engine stopped: write \`power: idle\`, or add \`stopped\` to its \`glide\``;
    source.report(reason, 'cross-check', ['defaults', 'power']);
  }
  items(handbook.aircraft).forEach((id, place) => {
    check(id, aircraftIds, 'aircraft', `${folder}/fleet`, ['handbook', 'aircraft', place]);
  });
  items(handbook.chapters).forEach((id, place) => {
    check(id, lessonIds, 'lesson', folder, ['handbook', 'chapters', place]);
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
