import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { parseAircraft } from '../../school/aircraft.ts';
import { checkSteep } from './check-steep.ts';

function messages(steep: string, type = 'weight-shift'): string[] {
  const value = `name: Trial
class: ${type}
source: Invented.
mass: { reference: 390 kg, flown: 365 kg }
wing: { span: 10 m, above-wheels: 2.6 m }
speeds: { stall: 29 kt, touchdown: 33 kt, approach: 45 kt }
glide: { idle: { speed: 42 kt, ratio: 6.4 } }
steep-approach: ${steep}
turns: { bank: 30 deg, limit: 60 deg, roll-rate: 20 deg/s }
landing-roll: 90 m
limits: { wind: 18 kt, crosswind: 9 kt }
`;
  const file = new VFile({ path: 'trial.yaml', value });
  const aircraft = parseAircraft(file);
  if (aircraft) checkSteep(file, aircraft);
  return file.messages.map(({ line, column, reason }) => `${line}:${column} ${reason}`);
}

describe('the steep approach of a weight-shift aircraft', () => {
  it('may lie off its polar by no more than a tenth', () => {
    // By hand, at 58 kt: u = 1.381, sin g = cos g0 / 2E (u^2 + (cos g / cos g0)^2 / u^2) = 0.188, 5.2:1.
    expect(messages('{ speed: 58 kt, ratio: 5.2 }')).toEqual([]);
    expect(messages('{ speed: 58 kt, ratio: 4.75 }')).toEqual([]);
    expect(messages('{ speed: 58 kt, ratio: 5.75 }')).toEqual([]);
  });

  it('is warned of where it is steeper or flatter than that, at its line', () => {
    for (const ratio of ['4.5', '6.1']) {
      expect(messages(`{ speed: 58 kt, ratio: ${ratio} }`)).toEqual([
        expect.stringMatching(/^8:\d+ `steep-approach`: at this speed the glide of `idle` gives 5\.2:1, and/),
      ]);
    }
  });

  it('is another glide in an aircraft that slips or has flap', () => {
    expect(messages('{ speed: 58 kt, ratio: 4.1 }', 'three-axis')).toEqual([]);
  });
});
