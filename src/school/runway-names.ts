import { formatAngle, formatDirection } from '../units/angle-text.ts';
import type { YamlSource } from './yaml-source.ts';

interface Named {
  readonly variation?: number | undefined;
  readonly runways: readonly { readonly name: string; readonly heading: number }[];
}

/** A runway's number is its magnetic heading in tens of degrees; headings drift, so a little more is allowed. */
const allowed = (15 * Math.PI) / 180;

/**
 * Two runways of the same name cannot be told apart: an error, whatever else is wrong. A name that does not agree
 * with the heading is a warning: one of the two is a slip, and a wrong heading turns the wind round.
 */
export function checkRunwayNames(source: YamlSource, airfield: Named | undefined): void {
  const seen = new Set<string>();
  typedNames(source.data).forEach((name, place) => {
    if (name === undefined) return;
    const reason = `There is a runway \`${name}\` before this one: give each its own name`;
    if (seen.has(name)) source.report(reason, 'duplicate-runway', ['runways', place, 'name']);
    seen.add(name);
  });
  if (airfield?.variation === undefined) return;
  const variation = airfield.variation;
  airfield.runways.forEach(({ name, heading }, place) => {
    const digits = /^(\d{1,2})[LRC]?$/i.exec(name)?.[1];
    if (digits === undefined) return;
    const magnetic = heading - variation;
    const off = Math.abs(Math.atan2(Math.sin(magnetic - tens(digits)), Math.cos(magnetic - tens(digits))));
    if (off <= allowed) return;
    const reason =
      `Runway \`${name}\` is ${formatAngle(off)} off its heading, ${formatDirection(magnetic)} magnetic: ` +
      'one of `name`, `heading` (true) and `variation` is wrong';
    source.warn(reason, 'runway-heading', ['runways', place, 'heading']);
  });
}

function tens(digits: string): number {
  return (Number(digits) * 10 * Math.PI) / 180;
}

function typedNames(data: unknown): (string | undefined)[] {
  const runways = (data as { runways?: unknown } | null)?.runways;
  if (!Array.isArray(runways)) return [];
  return runways.map((runway) => (typeof runway?.name === 'string' ? runway.name.trim() : undefined));
}
