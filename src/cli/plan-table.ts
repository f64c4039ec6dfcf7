import { crosswind, headwind } from '../flight/air/wind.ts';
import { indicatedSpeed } from '../flight/aircraft/calibration.ts';
import { grades } from '../flight/terms/grade.ts';
import type { Plan } from '../flight/terms/plan.ts';
import { approachNames } from '../words/approaches/approach-names.ts';
import { solvedPhrase } from '../words/approaches/solved-words.ts';
import { cautionSentence } from '../words/cautions/caution-words.ts';
import { cautionsOf, remediesOf } from '../words/cautions/grade-sentences.ts';
import { gradeNames, keyGrade, markWords } from '../words/cautions/grade-words.ts';
import { limitSource } from '../words/cautions/limit-sources.ts';
import { aviation } from '../words/figures/aviation.ts';
import {
  formatDensityAltitude,
  formatDistance,
  formatRatio,
  formatSpeed,
  formatTime,
  formatWind,
} from '../words/figures/format.ts';
import { capital } from '../words/figures/letter-case.ts';
import { formatKeyHeight } from '../words/keys/key-height.ts';
import { keyNames } from '../words/keys/key-names.ts';
import { windWords } from '../words/winds/wind-words.ts';

/**
 * A plan as a pilot reads it in a terminal: what was flown, the key positions, the cautions. `flyable`: what could be
 * flown in place of a plan that is not to be flown; left out, what its cautions say.
 */
export function planTable(plan: Plan, flyable: readonly string[] = []): string {
  return `${[...heading(plan), '', ...keyRows(plan), '', ...closing(plan, flyable)].join('\n')}\n`;
}

function heading(plan: Plan): string[] {
  const { aircraft, airfield, runway, air, approach, power, circuit, flown, grade } = plan;
  const { surfaceWind } = flown;
  const wind = windWords(
    {
      headwind: headwind(surfaceWind, runway.heading),
      crosswind: crosswind(surfaceWind, runway.heading),
    },
    aviation,
  );
  return [
    `Grade: ${grade === 'not-to-be-flown' ? gradeNames[grade].toUpperCase() : gradeNames[grade]}`,
    `${aircraft.name}, ${approachNames[approach].spoken}, engine ${power}; ${airfield.name} runway ${runway.name}, ${circuit}-hand`,
    `Wind ${formatWind(surfaceWind.from, surfaceWind.speed, aviation)}: ${wind}; density altitude ${formatDensityAltitude(air.densityAltitude, aviation)}`,
    `Glide at ${formatSpeed(indicatedSpeed(flown.glideSpeed, aircraft), aviation)}, ${formatRatio(flown.glideRatio)} in still air; final at ${formatSpeed(indicatedSpeed(flown.approachSpeed, aircraft), aviation)}`,
  ];
}

function keyRows(plan: Plan): string[] {
  const marks = plan.keys.map(({ id }) => keyGrade(plan, id));
  const rows = plan.keys.map((key) => [
    keyNames[key.id],
    formatKeyHeight(key, plan.cautions, aviation),
    key.along < -5 ? `${formatDistance(-key.along, aviation)} before` : formatDistance(key.along, aviation),
    `${formatDistance(Math.abs(key.across), aviation)}${sideWord(key.across)}`,
    formatTime(key.time),
  ]);
  const table = [['key position', 'height', 'along from spot', 'off centreline', 'time'], ...rows];
  const widths = table[0]!.map((_, column) => Math.max(...table.map((row) => row[column]!.length)));
  return table.map((row, at) => {
    const mark = marks[at - 1];
    const cells = row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!)));
    return [...cells, ...(mark ? [markWords[mark]] : [])].join('  ');
  });
}

/** Whole circles of a spiral, and how many the height allows. */
function circleWords({ circles }: Plan): string {
  return circles
    ? ` Whole circles: ${circles.flown}; the height allows ${circles.allowed} with a medium bank.`
    : '';
}

function sideWord(across: number): string {
  if (Math.abs(across) < 5) return '';
  return across < 0 ? ' left' : ' right';
}

function closing(plan: Plan, flyable: readonly string[]): string[] {
  const { made } = plan;
  const answer = made
    ? [`${solvedPhrase(plan, aviation)}.${circleWords(plan)}`]
    : ['The spot is not made; the flight shown is the nearest to it.'];
  return [
    ...answer,
    ...gradeLines(plan, flyable),
    'Training material. The aircraft handbook, local rules and a licensed instructor prevail.',
  ];
}

/** Each caution with its grade, the gravest first, and what would be flyable. */
function gradeLines(plan: Plan, flyable: readonly string[]): string[] {
  return grades.flatMap((grade) => [
    ...cautionsOf(plan, grade).map(
      (caution) =>
        `${capital(gradeNames[grade])} (${caution.code}): ${cautionSentence(caution, plan, aviation)} [${limitSource(caution, plan, aviation)}]`,
    ),
    ...(grade === plan.grade && flyable.length > 0
      ? flyable
      : remediesOf(cautionsOf(plan, grade), plan, aviation)),
  ]);
}
