import { standardDensity } from '../flight/air/air.ts';
import { countedHeadwind, landingRunOf, runScale } from '../flight/aircraft/landing-run.ts';
import { speedInGusts } from '../flight/plan/cautions/wind-cautions.ts';
import { metresPerFoot } from '../units/factors.ts';
import { input, type Published } from './published.ts';
import type { Topic } from './topic.ts';

/** A roll of 100 m at 10 m/s, so that the result is a percentage. */
const aircraft = { landingRoll: 100, speeds: { stall: 9, touchdown: 10, approach: 13 } };

/** By how many % the roll changes in still air, at a touchdown speed (m/s EAS) and a density altitude (m). */
function change(touchdownSpeed: number, altitude = 0): number {
  const flown = { touchdownSpeed, surfaceWind: { from: 0, speed: 0 } };
  return (
    landingRunOf({ aircraft, flown, air: { density: standardDensity(altitude) }, runway: { heading: 0 } }) -
    100
  );
}

/** The speed goes with the square root of the mass. */
const speedShare = (row: Published) => Math.sqrt(1 + input(row, 'heavier_pc') / 100);

export const landingRoll: Topic = {
  heading: 'Landing roll and speed in gusts',
  about:
    'A wind counts with the share that the rule names, half of a headwind and one and a half times a tailwind: the percentages of the wind are those of a wind that counts as much as this.',
  rowTopics: ['10_landing'],
  quantities: {
    'landing distance, change with the wind': (row) =>
      100 * (runScale(1 - input(row, 'ahead_pc') / 100, 1) - 1),
    'landing distance, change with the touchdown speed': (row) =>
      change(10 * (1 + input(row, 'faster_pc') / 100)),
    'touchdown speed and landing distance, change with the mass': (row) => [
      100 * (speedShare(row) - 1),
      change(10 * speedShare(row)),
    ],
    'landing distance, change with the altitude': (row) => change(10, input(row, 'H_ft') * metresPerFoot),
    'wind counted, ahead and behind': () => [100 * countedHeadwind(1), -100 * countedHeadwind(-1)],
    'share of the gust factor added to the approach speed': () => speedInGusts(0, 1),
    'approach speed in gusts': (row) => speedInGusts(input(row, 'V_kt'), input(row, 'gust_kt')),
  },
};
