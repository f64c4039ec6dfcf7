import { standardGravity } from '../flight/air/constants.ts';
import { loadAtStall, loadFactor, stallSpeedUnder, turnRadius, turnRate } from '../flight/aircraft/turns.ts';
import {
  radiansPerDegree as degree,
  metresPerSecondPerKnot as knot,
  metresPerFoot,
  metresPerSecondPerFootPerMinute,
} from '../units/factors.ts';
import { invert } from './invert.ts';
import { input, type Published } from './published.ts';
import type { Topic } from './topic.ts';

export const loadAndStall: Topic = {
  heading: 'Load factor and stall speed',
  rowTopics: ['3_turns'],
  quantities: {
    'load factor (printed figure)': (row) => loadFactor(input(row, 'bank_deg') * degree),
    'load factor, approximate': (row) => loadFactor(input(row, 'bank_deg') * degree),
    'bank said to give 3 g': () => invert(loadFactor, 3, 0, 1.5) / degree,
    'stall speed': (row) => stallSpeedUnder(input(row, 'n'), input(row, 'Vs1g_kt')),
    'speed to keep above in a 3 g turn': (row) => stallSpeedUnder(3, input(row, 'Vs1g_kt')),
    'older-aircraft manoeuvring speed': (row) =>
      stallSpeedUnder(
        invert((n) => stallSpeedUnder(n, 1), input(row, 'factor'), 1, 9),
        input(row, 'Vs_kt'),
      ),
    'load factor when stalled there': (row) => loadAtStall(input(row, 'V/Vs'), 1),
    'stall speed in 60 deg bank': (row) =>
      stallSpeedUnder(loadFactor(input(row, 'bank_deg') * degree), input(row, 'Vs1g_kt')),
  },
};

const rateBank = (tas: number, degreesPerSecond: number) =>
  invert((bank) => turnRate(tas, bank), degreesPerSecond * degree, 0.001, 1.5);
const standardBank = (row: Published) => rateBank(input(row, 'TAS_kt') * knot, 3) / degree;

export const turnRateAndRadius: Topic = {
  heading: 'Turn rate, radius and standard-rate bank',
  rowTopics: ['3_turns', '13_handling'],
  quantities: {
    'standard-rate turn': () =>
      turnRate(50, Math.atan((50 * (2 * Math.PI)) / 120 / standardGravity)) / degree,
    'bank rule 15 % of TAS': standardBank,
    'bank for 3 deg/s': standardBank,
    'handbook radius constant': () => {
      const bank = 30 * degree;
      return 100 ** 2 / ((turnRadius(100 * knot, bank) / metresPerFoot) * Math.tan(bank));
    },
    'handbook rate constant': () =>
      ((turnRate(100 * knot, 30 * degree) / degree) * 100) / Math.tan(30 * degree),
    radius: (row) => turnRadius(input(row, 'TAS_kt') * knot, input(row, 'bank_deg') * degree) / metresPerFoot,
    rate: (row) => turnRate(input(row, 'TAS_kt') * knot, input(row, 'bank_deg') * degree) / degree,
    'turn-back example: radius at 65 kt, rate one': (row) => {
      const tas = input(row, 'TAS_kt') * knot;
      return turnRadius(tas, rateBank(tas, input(row, 'rate_dps'))) / metresPerFoot;
    },
    'turn-back example: lateral offset after 180': () => {
      const tas = 65 * knot;
      return (2 * turnRadius(tas, rateBank(tas, 3))) / metresPerFoot;
    },
    'turn-back example: total heading change / time': () => {
      const tas = 65 * knot;
      return [180 + 45, (225 * degree) / turnRate(tas, rateBank(tas, 3))];
    },
    'turn-back example: height lost': (row) =>
      (input(row, 'fpm') * metresPerSecondPerFootPerMinute * input(row, 'time_s')) / metresPerFoot,
    'rate-one calibration': () => (90 * degree) / turnRate(60 * knot, rateBank(60 * knot, 3)),
  },
};
