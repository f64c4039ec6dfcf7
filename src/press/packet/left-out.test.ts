import { describe, expect, it } from 'vitest';
import { sampleAircraft, sampleRequest } from '../../../tests/press-sample.ts';
import { planApproach } from '../../flight/plan/planner.ts';
import { type Simplification, simplifications } from '../../flight/questions/simplifications.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { gradientSentence, leftOutLines, type Sized, sizesSentence } from './left-out.ts';

const inFeet = { height: 'ft', distance: 'ft', speed: 'kt' } as const;
const inMetres = { height: 'm', distance: 'm', speed: 'km/h' } as const;

function sizedPlan(changes: Partial<PlanRequest> = {}): Sized {
  const request = { ...sampleRequest, ...changes, detail: 'flight' as const };
  return { plan: planApproach(request), sizes: simplifications(request) };
}

const { plan } = sizedPlan();
const one = (size: Partial<Simplification>): Sized => ({
  plan,
  sizes: [{ code: 'wet-wing', along: 0, ends: 'on-final', ...size }],
});
const wetWing = (size: Partial<Simplification>, units: PageUnits = inFeet) =>
  leftOutLines(units, one(size))
    .find((line) => line.startsWith('A wet'))!
    .split('source): ')[1];

describe('what is not in it', () => {
  it('says each size to 10 ft or 5 m, short or long, and what is less than that as under it', () => {
    expect(wetWing({ along: -62.2 })).toBe('200\u00a0ft short.');
    expect(wetWing({ along: 62.2 })).toBe('200\u00a0ft long.');
    expect(wetWing({ along: -62.6 }, inMetres)).toBe('65\u00a0m short.');
    expect(wetWing({ along: 1 })).toBe('under 10\u00a0ft.');
    expect(wetWing({ along: -2 }, inMetres)).toBe('under 5\u00a0m.');
  });

  it('says where a flight has no size', () => {
    expect(wetWing({ ends: 'before-final' })).toBe('(the ground is met before final).');
    expect(wetWing({ ends: 'nowhere' })).toBe('(it does not come down).');
  });

  it('prints the sizes that were flown for this plan', () => {
    const lines = leftOutLines(inFeet, sizedPlan()).join('\n').replaceAll('\u00a0', ' ');
    expect(lines).toMatch(/Idle thrust .*: 30 ft long\./);
    expect(lines).toMatch(/veering wind \d+ ft short, backing wind \d+ ft long\./);
    expect(lines).toMatch(/sinking air \d+ ft short, rising air \d+ ft long\./);
    expect(lines).not.toContain('windmills');
    expect(lines).toMatch(/slopes: no figure/);
  });

  it('does not say of a plan whose wind turns that turning is left out, but sizes it turning otherwise', () => {
    const veering = (veer: number) => ({
      airfield: { ...plan.airfield, windVeer: (veer * Math.PI) / 180 },
    });
    const lines = leftOutLines(inFeet, sizedPlan(veering(20)))
      .join('\n')
      .replaceAll('\u00a0', ' ');
    expect(lines).toMatch(
      /^Wind that turns otherwise than planned: by 20° more up to 1,000 ft, .*: wind 20° farther clockwise \d+ ft short, wind 20° farther anticlockwise \d+ ft long\.$/m,
    );
    expect(lines).not.toMatch(/Wind that turns by|veering wind|backing wind/);
    // A book says it for all its plans.
    const book = (plans: readonly Plan[]) => leftOutLines(inFeet, undefined, plans).join(' ');
    expect(book([plan, sizedPlan(veering(-10)).plan])).not.toContain('Wind that turns by');
    expect(book([plan])).toContain('Wind that turns by');
  });

  it('leaves out what has no bearing on the plan, and says why a figure is missing', () => {
    const stopped = leftOutLines(inFeet, sizedPlan({ power: 'stopped' })).join('\n');
    expect(stopped).toContain('windmills');
    expect(stopped).not.toContain('Idle thrust');
    expect(leftOutLines(inFeet, sizedPlan({ mass: 390 })).join('\n')).not.toContain('Idle thrust');
    const { idle } = sampleAircraft.glide;
    const unknown = leftOutLines(inFeet, sizedPlan({ aircraft: { ...sampleAircraft, glide: { idle } } }));
    expect(unknown[0]).toContain('no figure without the glide of a stopped engine');
  });

  it('says all of it once for a book, and each plan’s sizes in a sentence', () => {
    const lines = leftOutLines(inFeet);
    expect(lines.length).toBeGreaterThan(leftOutLines(inFeet, sizedPlan()).length);
    expect(lines.join(' ')).not.toMatch(/(short|long)[,.]/);
    expect(sizesSentence(sizedPlan(), inFeet).replaceAll('\u00a0', ' ')).toMatch(
      /: idle thrust 30 ft long; veering wind .* wet wing \d+ ft short; /,
    );
    expect(sizesSentence({ plan, sizes: [] }, inFeet)).toContain('no flight was found');
  });

  it('says what the wind gradient costs, or gives, and nothing in a calm', () => {
    const gradient = (along: number) => gradientSentence(one({ code: 'wind-gradient', along }), inFeet);
    expect(gradient(-39)).toMatch(/costs this plan 130\u00a0ft.*farther on/);
    expect(gradient(39)).toMatch(/gives this plan 130\u00a0ft.*shorter/);
    expect(gradientSentence(sizedPlan({ wind: { from: 0, speed: 0 } }), inFeet)).toBeUndefined();
  });
});
