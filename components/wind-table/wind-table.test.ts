import { describe, expect, it } from 'vitest';
import { windsWithin } from '../../src/flight/questions/winds-within.ts';
import { contextOf, degrees, flyTrial, knots, renderBody } from '../trial-packet.ts';

const plan = flyTrial();
const rowsOf = (html: string) =>
  [...html.matchAll(/<tr><th scope="row"[^>]*>(.*?)<\/th>(.*?)<\/tr>/g)].map((row) => [
    row[1]!,
    ...[...row[2]!.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map((cell) => cell[1]!),
  ]);
/** What is printed under the figures of a row. */
const notesOf = (html: string) =>
  [...html.matchAll(/<tr><td colspan="\d+">(.*?)<\/td><\/tr>/g)].map(([, said]) => said);
const heads = (html: string) =>
  [...html.matchAll(/<th scope="col"[^>]*>(.*?)<\/th>/g)].map((head) => head[1]);
/** A wind down runway 24 (238 degrees). */
const ahead = (kt: number) =>
  flyTrial({ wind: { from: degrees(kt < 0 ? 58 : 238), speed: knots(Math.abs(kt)) } });
/** m: the start height from which the first row that says so is sound. */
const startIn = (html: string) =>
  Number(/sound from ([\d,]+) ft at the downwind key/.exec(html)![1]!.replace(',', '')) * 0.3048;
/** The limits that a plan from this height (m), in a wind straight down the runway, passes. */
function limitsFrom(height: number, kt: number, minimums = {}): string[] {
  const wind = { from: degrees(kt < 0 ? 58 : 238), speed: knots(Math.abs(kt)) };
  const { made, cautions } = flyTrial({ height, wind, minimums });
  const passed = cautions.filter(({ grade }) => grade !== 'worth-knowing').map(({ code }) => code);
  return made ? passed : ['beyond-reach', ...passed];
}
const tens = (value: number, unit: string) => `${Math.round(value / 10) * 10} ${unit}`;

describe('::wind-table', () => {
  it('has in each row what the plan flown in that wind has', () => {
    const { html, messages } = renderBody('::wind-table{along="0kt 5kt 15kt"}', plan);
    expect(messages).toEqual([]);
    expect(heads(html)).toEqual([
      'Along the runway',
      'Base turn starts',
      'After the key',
      'Height at base key',
      'Height at final',
      'Steepest bank',
      'Crab on base',
    ]);
    for (const [i, kt] of [0, 5, 15].entries()) {
      const { keys } = ahead(kt);
      const at = (id: string) => keys.find((key) => key.id === id)!;
      const turn = at('base-turn');
      expect(rowsOf(html)[i]!.slice(0, 6)).toEqual([
        kt === 0 ? 'none' : `headwind ${kt} kt`,
        `${tens(-turn.along, 'm')} past abeam`,
        `${Math.round(turn.time - at('downwind-key').time)} s`,
        tens(at('base-key').height / 0.3048, 'ft'),
        tens(at('final').height / 0.3048, 'ft'),
        '30°',
      ]);
    }
  });

  it('points the nose into the wind on base: to the left on a left base, as the wind triangle has it', () => {
    const uniform = flyTrial({ windProfile: 'uniform' });
    const { html } = renderBody('::wind-table{along="0kt 10kt"}', uniform);
    const [calm, windy] = rowsOf(html);
    expect(calm!.at(-1)).toBe('none');
    // The sine of the crab angle is the crosswind over the horizontal airspeed (FAA-H-8083-25, Navigation, wind
    // triangle).
    const flown = flyTrial({ windProfile: 'uniform', wind: { from: degrees(238), speed: knots(10) } });
    const { tas, sink } = flown.track.findLast(({ phase }) => phase === 'base')!;
    const crab = Math.asin(knots(10) / Math.sqrt(tas ** 2 - sink ** 2));
    expect(windy!.at(-1)).toBe(`${Math.round((crab * 180) / Math.PI)}° to the left`);
  });

  it('calls a negative headwind a tailwind, and warns of a low turn to final', () => {
    const { html } = renderBody('::wind-table{along="-5kt 10kt"}', plan);
    expect(ahead(-5).cautions.map(({ code }) => code)).toContain('final-turn-low');
    const [tail, head] = rowsOf(html);
    expect(tail![0]).toBe('tailwind 5 kt');
    expect([...tail!, ...notesOf(html)].join(' ')).toMatch(
      /turn to final complete at \d+ ft, at least 300 ft/,
    );
    expect(head![0]).toBe('headwind 10 kt');
    expect(head).toHaveLength(heads(html).length);
  });

  it('has a column for winds across, with their side', () => {
    const { html } = renderBody('::wind-table{along="8kt" across="-6kt 0kt 6kt"}', plan);
    expect(rowsOf(html).map((row) => row[1])).toEqual(['6 kt from the left', 'none', '6 kt from the right']);
  });

  it('has a row for each veer, how far it turns and the wind across at the key; a calm has one', () => {
    const { html, messages } = renderBody('::wind-table{along="0kt 8kt" veer="0deg 20deg -20deg"}', plan);
    expect(messages).toEqual([]);
    const rows = rowsOf(html);
    expect(rows.map(([along, turns]) => `${along}, ${turns}`)).toEqual([
      'none, none',
      'headwind 8 kt, none',
      'headwind 8 kt, 20° clockwise',
      'headwind 8 kt, 20° anticlockwise',
    ]);
    expect(heads(html)).toContain('Turns with height');
    const at = heads(html).indexOf('Across, at the key');
    // A headwind of 8 kt is 8 x 30.48^0.143 = 13 kt at 1,000 ft; turned by 20 degrees, its sine is across: 4.5, less
    // the corner.
    expect(rows.map((row) => row[at])).toEqual(['none', 'none', '4 kt from the right', '4 kt from the left']);
    const airfield = { ...plan.airfield, windVeer: degrees(20) };
    const flown = flyTrial({ airfield, wind: { from: degrees(238), speed: knots(8) } });
    const turn = flown.keys.find(({ id }) => id === 'base-turn')!;
    expect(rows[2]![heads(html).indexOf('Base turn starts')]).toBe(`${tens(-turn.along, 'm')} past abeam`);
    expect(rows[2]).not.toEqual(rows[1]);
    // The bank is 30 degrees in every row.
    expect(heads(html)).not.toContain('Steepest bank');
  });

  it('takes the veer of the airfield where none is asked for, and none where none is', () => {
    const veering = flyTrial({ airfield: { ...plan.airfield, windVeer: degrees(20) } });
    const { html } = renderBody('::wind-table{along="8kt"}', veering);
    expect(rowsOf(html)[0]![1]).toBe('20° clockwise');
    const asked = renderBody('::wind-table{along="8kt" veer="20deg"}', plan).html;
    expect(rowsOf(html)).toEqual(rowsOf(asked));
    const straight = renderBody('::wind-table{along="8kt" veer="0deg"}', veering).html;
    expect(straight).toBe(renderBody('::wind-table{along="8kt"}', plan).html);
  });

  it('says that a wind of another kind does not turn by a veer, and how a veer is typed', () => {
    const uniform = flyTrial({ windProfile: 'uniform' });
    expect(renderBody('::wind-table{veer="20deg"}', uniform).messages).toEqual([
      expect.stringMatching(/^4:1 The wind of this packet does not follow the power law.*leave out `veer`/),
    ]);
    expect(renderBody('::wind-table{veer="20"}', plan).messages).toEqual([
      expect.stringMatching(/`20` has no unit: write an angle such as `20deg`/),
    ]);
    expect(renderBody('::wind-table{veer="120deg"}', plan).messages).toEqual([
      expect.stringMatching(/`120deg` is outside what is possible here \(-90 deg to 90 deg\)/),
    ]);
  });

  it('leaves out what is over the limits of the aircraft, and says so', () => {
    // Osier 15: wind 18 kt, crosswind 9 kt.
    const { html } = renderBody('::wind-table{along="10kt 20kt" across="0kt 10kt"}', plan);
    expect(rowsOf(html)).toHaveLength(1);
    expect(html).toContain(
      'Left out, being over its limits (wind 18 kt, crosswind 9 kt): headwind 20 kt; headwind 10 kt, 10 kt from the right; headwind 20 kt, 10 kt from the right.',
    );
    const { limits } = plan.aircraft;
    expect(windsWithin([limits.wind], [0], plan.aircraft).winds).toHaveLength(1);
    const tail = (limit?: number) =>
      windsWithin([-5, -3], [0], { limits: { ...limits, tailwind: limit } }).winds;
    expect([tail(), tail(4), tail(5), tail(0)].map(({ length }) => length)).toEqual([2, 1, 2, 0]);
    expect(windsWithin([0.8 * limits.wind], [0.8 * limits.wind], plan.aircraft).winds).toHaveLength(0);
    expect(renderBody('::wind-table{along="25kt"}', plan).messages).toEqual([
      expect.stringMatching(/^4:1 Every wind of this table is over the limits of the Osier 15/),
    ]);
  });

  it('shows of an approach that begins on base what it has', () => {
    const { html, messages } = renderBody('::wind-table{along="10kt 15kt"}', flyTrial({ approach: '90' }));
    expect(messages).toEqual([]);
    expect(heads(html)).not.toContain('Base turn starts');
    expect(heads(html)).toContain('Height at base key');
    const flown = flyTrial({ approach: '90', wind: { from: degrees(238), speed: knots(15) } });
    const [, out, height] = rowsOf(html)[1]!;
    expect(height).toBe(tens(flown.keys[0]!.height / 0.3048, 'ft'));
    expect(out).toBe(tens(Math.abs(flown.keys[0]!.across), 'm'));
  });

  it('flies what the plan was asked for: power, height, spacing', () => {
    const changes = { power: 'stopped', height: 320, spacing: 420 } as const;
    const own = flyTrial({ ...changes, wind: { from: degrees(238), speed: knots(5) } });
    const { html } = renderBody('::wind-table{along="5kt 10kt"}', flyTrial(changes));
    const turn = own.keys.find(({ id }) => id === 'base-turn')!;
    expect(rowsOf(html)[0]![1]).toBe(`${tens(-turn.along, 'm')} past abeam`);
    expect(html).toContain('engine stopped');
  });

  it('prints no figure where the spot is not made, but the height that works', () => {
    const low = flyTrial({ height: 90 });
    const { html } = renderBody('::wind-table{along="0kt"}', low);
    expect(html).toContain('the spot is not made in this wind');
    expect(rowsOf(html)[0]).toHaveLength(2);
    expect(rowsOf(html)[0]![1]).toContain('<span class="grade-mark not-to-be-flown">not to be flown</span>');
    const from = startIn(html);
    expect(limitsFrom(from, 0)).toEqual([]);
    expect(limitsFrom(from - 3.048, 0)).not.toEqual([]);
  });

  it('marks a wind in which the approach is not to be flown, without figures, and says the height that works', () => {
    const minimums = { finalTurn: 150 };
    const { html } = renderBody('::wind-table{along="-4kt 15kt"}', flyTrial({ minimums }));
    const [tail] = rowsOf(html);
    expect(tail).toHaveLength(2);
    expect(tail![1]).toMatch(
      /^<span class="grade-mark not-to-be-flown">not to be flown<\/span>: turn to final complete at \d+ ft, at least 500 ft; sound from [\d,]+ ft at the downwind key$/,
    );
    expect(limitsFrom(startIn(html), -4, minimums)).toEqual([]);
    expect(limitsFrom(startIn(html) - 3.048, -4, minimums)).toEqual(['final-turn-low']);
  });

  it('keeps the figures of a wind beyond a limit of good practice, marked, with the height that works', () => {
    const minimums = { finalTurn: 110 };
    const { html } = renderBody('::wind-table{along="0kt 15kt"}', flyTrial({ minimums }));
    const [calm, windy] = rowsOf(html);
    expect(calm!.length).toBe(windy!.length);
    expect(notesOf(html)).toHaveLength(1);
    expect(html).toMatch(/<th scope="row" rowspan="2"[^>]*>none<\/th>/);
    expect(calm![1]).toMatch(/^\d+ m past abeam$/);
    expect(notesOf(html)[0]).toMatch(
      /^<span class="grade-mark beyond-good-practice">beyond a limit<\/span>: turn to final complete at \d+ ft, at least 370 ft; sound from [\d,]+ ft at the downwind key$/,
    );
    expect(limitsFrom(startIn(html), 0, minimums)).toEqual([]);
    expect(limitsFrom(startIn(html) - 3.048, 0, minimums)).toEqual(['final-turn-low']);
  });

  it('says that no height works, and why', () => {
    const mast = { what: 'mast', height: 60, along: -250, across: 0, width: 4 };
    const { html } = renderBody(
      '::wind-table{along="0kt"}',
      flyTrial({ runway: { ...plan.runway, obstacles: [mast] } }),
    );
    expect(rowsOf(html)[0]![1]).toMatch(/obstacle.*; no height makes it sound/);
  });

  it('has a low turn to final as the table of keys has it, and its size beside the limit', () => {
    const minimums = { finalTurn: 110 };
    const { html } = renderBody('::wind-table{along="0kt"}', flyTrial({ minimums }));
    const { keys } = flyTrial({ minimums, wind: { from: 0, speed: 0 } });
    const final = keys.find(({ id }) => id === 'final')!.height;
    const at = heads(html).indexOf('Height at final');
    expect(rowsOf(html)[0]![at]).toBe(tens(final / 0.3048, 'ft'));
  });

  it('says what is to be typed', () => {
    expect(renderBody('::wind-table{along="5"}', plan).messages).toEqual([
      expect.stringMatching(/^4:\d+ .*`5` has no unit: write a speed such as `5kt`/),
    ]);
    expect(renderBody('::wind-table{along="5 kt, 10 kt"}', plan).messages).toEqual([]);
    expect(contextOf(plan).request.approach).toBe('180');
  });
});
