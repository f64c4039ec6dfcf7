import { windWords } from '../../components/wind-table/wind-words.ts';
import { formatKeyHeight } from '../drawing/key-height.ts';
import { indicatedSpeed } from '../flight/calibration.ts';
import type { Plan } from '../flight/plan.ts';
import { crosswind, headwind } from '../flight/wind.ts';
import { solvedPhrase } from '../press/solved-words.ts';
import {
  formatDensityAltitude,
  formatDistance,
  formatRatio,
  formatSpeed,
  formatTime,
  formatWind,
} from '../units/format.ts';
import type { PageUnits } from '../units/page-units.ts';

const units: PageUnits = { height: 'ft', distance: 'm', speed: 'kt' };

/** A plan as a pilot reads it in a terminal: what was flown, the key positions, the cautions. */
export function planTable(plan: Plan): string {
  return `${[...heading(plan), '', ...keyRows(plan), '', ...closing(plan)].join('\n')}\n`;
}

function heading({ aircraft, airfield, runway, air, approach, power, circuit, flown }: Plan): string[] {
  const { surfaceWind } = flown;
  const wind = windWords(
    {
      headwind: headwind(surfaceWind, runway.heading),
      crosswind: crosswind(surfaceWind, runway.heading),
    },
    units,
  );
  return [
    `${aircraft.name}, ${approach}-degree approach, engine ${power}; ${airfield.name} runway ${runway.name}, ${circuit}-hand`,
    `Wind ${formatWind(surfaceWind.from, surfaceWind.speed, units)}: ${wind}; density altitude ${formatDensityAltitude(air.densityAltitude, units)}`,
    `Glide at ${formatSpeed(indicatedSpeed(flown.glideSpeed, aircraft), units)}, ${formatRatio(flown.glideRatio)} in still air; final at ${formatSpeed(indicatedSpeed(flown.approachSpeed, aircraft), units)}`,
  ];
}

function keyRows({ keys, cautions }: Plan): string[] {
  const rows = keys.map((key) => [
    key.label,
    formatKeyHeight(key, cautions, units),
    key.along < -5 ? `${formatDistance(-key.along, units)} before` : formatDistance(key.along, units),
    `${formatDistance(Math.abs(key.across), units)}${sideWord(key.across)}`,
    formatTime(key.time),
  ]);
  const table = [['key position', 'height', 'along from spot', 'off centreline', 'time'], ...rows];
  const widths = table[0]!.map((_, column) => Math.max(...table.map((row) => row[column]!.length)));
  return table.map((row) =>
    row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  '),
  );
}

/** Whole circles of a spiral, and how many there might be. */
function circleWords({ circles }: Plan): string {
  return circles
    ? ` Whole circles: ${circles.flown}; the height allows ${circles.allowed} with a medium bank.`
    : '';
}

function sideWord(across: number): string {
  if (Math.abs(across) < 5) return '';
  return across < 0 ? ' left' : ' right';
}

function closing(plan: Plan): string[] {
  const { made, cautions } = plan;
  const answer = made
    ? [`${solvedPhrase(plan, units)}.${circleWords(plan)}`]
    : ['The spot is not made; the flight shown is the nearest to it.'];
  return [
    ...answer,
    ...cautions.map(({ code, message, source }) => `Caution (${code}): ${message} [${source}]`),
    'Training material. The aircraft handbook, local rules and a licensed instructor prevail.',
  ];
}
