import { describe, expect, it } from 'vitest';
import {
  loadAtStall,
  loadFactor,
  mediumBank,
  rollOutLead,
  stallSpeedUnder,
  turnRadius,
  turnRate,
} from './turns.ts';

const degrees = Math.PI / 180;

describe('a turn', () => {
  it('at 60 degrees of bank doubles the weight', () => expect(loadFactor(60 * degrees)).toBeCloseTo(2, 12));

  it('raises the stall speed with the square root of the load', () => {
    expect(stallSpeedUnder(4, 15)).toBe(30);
    expect(stallSpeedUnder(1, 15)).toBe(15);
    // What a wing bears grows with the square of the speed.
    expect(loadAtStall(30, 15)).toBe(4);
    expect(loadAtStall(stallSpeedUnder(1.7, 15), 15)).toBeCloseTo(1.7, 12);
  });

  it('goes once round its circle at its rate and its speed', () => {
    for (const bank of [0.1, 0.5, 1]) {
      const seconds = (2 * Math.PI) / turnRate(25, bank);
      expect(25 * seconds).toBeCloseTo(2 * Math.PI * turnRadius(25, bank), 9);
    }
  });

  it('is medium up to 45 degrees (FAA-H-8083-3, chapter 3)', () =>
    expect(mediumBank).toBeCloseTo(45 * degrees, 12));

  it('at 45 degrees has a radius of V^2/g', () => {
    expect(turnRadius(20, 45 * degrees)).toBeCloseTo(400 / 9.80665, 9);
  });

  it('goes the other way for a bank to the other side', () => {
    expect(turnRate(20, -0.4)).toBe(-turnRate(20, 0.4));
  });
});

describe('the lead of a roll-out', () => {
  it('is the turn rate summed up over the roll', () => {
    const [tas, bank, rollRate, pieces] = [22, 0.6, 0.35, 20_000];
    let heading = 0;
    for (let i = 0; i < pieces; i++) {
      heading += (turnRate(tas, (bank * (i + 0.5)) / pieces) * bank) / rollRate / pieces;
    }
    expect(rollOutLead(tas, bank, rollRate)).toBeCloseTo(heading, 8);
  });

  it('is the same to either side, and nothing where the bank comes off at once', () => {
    expect(rollOutLead(22, -0.6, 0.35)).toBe(rollOutLead(22, 0.6, 0.35));
    expect(rollOutLead(22, 0.6, Number.POSITIVE_INFINITY)).toBe(0);
  });
});
