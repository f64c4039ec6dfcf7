import { describe, expect, it } from 'vitest';
import { landingRunOf } from '../../src/flight/aircraft/landing-run.ts';
import { flyTrial, renderBody, sayIn } from '../trial-packet.ts';

const plan = flyTrial();
const metresIn = (text: string) => Number(/^[\d,]+(?= m$)/.exec(text)![0].replace(',', ''));

describe(':ground[…]', () => {
  it('says the landing roll in this wind, shorter than in a calm, and rounds it up', () => {
    // 10 kt from 32 degrees off the runway, half of it counted, at 365 of 390 kg: about 90 m x 0.7.
    const roll = landingRunOf(plan);
    const said = metresIn(sayIn(':ground[roll]', plan));
    expect(said).toBeGreaterThanOrEqual(roll);
    expect(said).toBeLessThan(roll + 10);
    expect(metresIn(sayIn(':ground[roll]', flyTrial({ wind: { from: 0, speed: 0 } })))).toBeGreaterThan(said);
  });

  it('counts from where the path is 50 ft up to the stop, and rounds up', () => {
    // The screen height of 14 CFR 25.125, and of landing distances in aircraft handbooks.
    const below = plan.track.findIndex(({ height }) => height < 50 * 0.3048);
    const [before, after] = [plan.track[below - 1]!, plan.track[below]!];
    const said = metresIn(sayIn(':ground[over-50-ft]', plan));
    const roll = landingRunOf(plan);
    expect(said).toBeGreaterThanOrEqual(plan.touchdown.along - after.along + roll);
    expect(said).toBeLessThan(plan.touchdown.along - before.along + roll + 10);
  });

  it('says what is left of the runway, rounded down', () => {
    // 520 m of runway, the spot 100 m in.
    const left = 520 - 100 - plan.touchdown.along - landingRunOf(plan);
    const given = { ...plan, runway: { ...plan.runway, length: 520, spot: 100 } };
    const said = metresIn(sayIn(':ground[left]', given));
    expect(said).toBeLessThanOrEqual(left);
    expect(said).toBeGreaterThan(left - 10);
  });

  it('says in words where the runway is too short', () => {
    const length = 100 + plan.touchdown.along + landingRunOf(plan) - 15;
    const short = { ...plan, runway: { ...plan.runway, length, spot: 100 } };
    expect(sayIn(':ground[left]', short)).toBe('nothing: the roll ends 20 m beyond the runway');
  });

  it('says where no path comes down through 50 ft', () => {
    const low = { ...plan, track: plan.track.filter(({ height }) => height < 15) };
    expect(renderBody(':ground[over-50-ft]', low).messages).toEqual([
      '4:1 This 180 approach starts below 50 ft: there is no distance from there',
    ]);
  });
});
