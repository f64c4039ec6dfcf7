import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody, sayIn } from '../trial-packet.ts';

const plan = flyTrial();
const metresIn = (text: string) => Number(/^[\d,]+(?= m$)/.exec(text)![0].replace(',', ''));

describe(':ground[…]', () => {
  it('says the landing roll of the aircraft', () => expect(sayIn(':ground[roll]', plan)).toBe('90 m'));

  it('counts from where the path is 50 ft up to the stop, and rounds up', () => {
    // The screen height of 14 CFR 25.125, and of landing distances in aircraft handbooks.
    const below = plan.track.findIndex(({ height }) => height < 50 * 0.3048);
    const [before, after] = [plan.track[below - 1]!, plan.track[below]!];
    const said = metresIn(sayIn(':ground[over-50-ft]', plan));
    const { landingRoll } = plan.aircraft;
    expect(said).toBeGreaterThanOrEqual(plan.touchdown.along - after.along + landingRoll);
    expect(said).toBeLessThan(plan.touchdown.along - before.along + landingRoll + 10);
  });

  it('says what is left of the runway, rounded down', () => {
    // 520 m of runway, the spot 100 m in, 90 m of roll.
    const left = 520 - 100 - plan.touchdown.along - 90;
    const given = { ...plan, runway: { ...plan.runway, length: 520, spot: 100 } };
    const said = metresIn(sayIn(':ground[left]', given));
    expect(said).toBeLessThanOrEqual(left);
    expect(said).toBeGreaterThan(left - 10);
  });

  it('says in words where the runway is too short', () => {
    const short = { ...plan, runway: { ...plan.runway, length: 175, spot: 100 } };
    expect(sayIn(':ground[left]', short)).toBe('nothing: the roll ends 20 m beyond the runway');
  });

  it('says where no path comes down through 50 ft', () => {
    const low = { ...plan, track: plan.track.filter(({ height }) => height < 15) };
    expect(renderBody(':ground[over-50-ft]', low).messages).toEqual([
      '4:1 This 180 approach starts below 50 ft: there is no distance from there',
    ]);
  });
});
