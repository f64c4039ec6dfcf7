import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import type { FaultsFile } from '../../src/school/faults.ts';
import { readFlyText } from '../../src/school/fly-text.ts';
import { contextOf, degrees, flyTrial, knots, renderBody } from '../trial-packet.ts';
import { faults } from './faults.ts';

const plan = flyTrial();
const row = (id: string, of?: FaultsFile['faults'][number]['class']) => ({
  id,
  fault: `Fault ${id}`,
  sign: `Sign ${id}`,
  cause: `Cause ${id}`,
  recovery: `Recovery ${id}`,
  prevent: `Prevent ${id}`,
  ...(of ? { class: of } : {}),
});
const file: FaultsFile = {
  name: 'Faults of the trial',
  source: 'Invented for the test',
  faults: [row('slow'), row('bar', ['weight-shift']), row('flap', ['three-axis', 'glider'])],
};

function render(from: string, only?: string[]): string {
  const school = { ...contextOf(plan).school, faults: new Map([['trial', file]]) };
  const context = { ...contextOf(plan), school };
  const children = faults.render({
    attributes: { from, only },
    label: '',
    children: [],
    ordinal: 1,
    context,
  });
  return toHtml(children);
}

describe('::faults', () => {
  it('is a table of the file: what is seen, cause, recovery, prevention, and the source', () => {
    const html = render('trial');
    expect(html).toContain(
      '<th scope="row">Fault slow</th><td>Sign slow</td><td>Cause slow</td><td>Recovery slow</td><td>Prevent slow</td>',
    );
    expect(html).toContain('Faults of the trial.');
    expect(html).toContain('Source: Invented for the test.');
  });

  it('keeps rows of another class out', () => {
    expect(plan.aircraft.class).toBe('weight-shift');
    expect(render('trial')).toContain('Fault bar');
    expect(render('trial')).not.toContain('Fault flap');
    expect(() => render('trial', ['flap'])).toThrow(
      'No row asked for from `trial` is for a weight-shift aircraft',
    );
  });

  it('takes only the rows asked for, in the order of the file', () => {
    const html = render('trial', ['bar', 'slow']);
    expect(html.indexOf('Fault slow')).toBeLessThan(html.indexOf('Fault bar'));
    expect(render('trial', ['bar'])).not.toContain('Fault slow');
  });

  it('names the nearest file and row', () => {
    expect(() => render('trials')).toThrow(
      'The school has no file `faults/trials.yaml`; did you mean `trial`? (it has `trial`)',
    );
    expect(() => render('trial', ['slw'])).toThrow(
      '`faults/trial.yaml` has no row `slw`; did you mean `slow`? It has `slow`, `bar` or `flap`',
    );
  });

  it("prints the demonstration school's own files", () => {
    const { html, messages } = renderBody('::faults{from=power-off only="glide-slow"}', plan);
    expect(messages).toEqual([]);
    expect(html).toContain('Glide speed too low');
    expect(renderBody('::faults', plan).messages).toEqual([
      expect.stringMatching(/`faults` needs `from=…` in its braces: the name of a file in `faults\/`/),
    ]);
  });
});

describe('what flying a fault came to', () => {
  const flown = (fly: string, changes: Parameters<typeof flyTrial>[0] = {}) => {
    const trial = flyTrial(changes);
    const context = contextOf(trial);
    const own = { ...file, faults: [{ ...row('own'), fly: readFlyText(fly) }] };
    const school = { ...context.school, faults: new Map([['own', own]]) };
    const html = toHtml(
      faults.render({
        attributes: { from: 'own' },
        label: '',
        children: [],
        ordinal: 1,
        context: { ...context, school },
      }),
    );
    return /<tr class="flown"><td colspan="5">(.*?)<\/td>/.exec(html)![1]!.replaceAll('\u00a0', ' ');
  };

  it('stands under its row, from a line that an instructor wrote and no code', () => {
    expect(flown('spacing: +40 %')).toMatch(
      /^<b>Flown<\/b> \(spacing: \+40 %\): The wheels touch \d+ m short\. It shows first at the downwind key/,
    );
    expect(flown('base-turn: 6 s early')).toMatch(/The wheels touch \d+ m long\./);
  });

  it('counts the ground that is flown in the seconds of a late base turn', () => {
    // 6 s farther out with the wind, and 6 s farther back against it: about twice the still-air distance.
    const calm = flown('base-turn: 6 s late', { wind: { from: 0, speed: 0 } });
    const short = Number(/touch (\d+) m short/.exec(calm)![1]);
    const tas = plan.aircraft.glide.idle.speed * 1.02;
    expect(short).toBeGreaterThan(2 * 6 * tas * 0.9);
    expect(short).toBeLessThan(2 * 6 * tas * 1.1);
  });

  it('leaves out a fault that is what the plan does anyhow', () => {
    const rows = (power: 'idle' | 'stopped', only: string) =>
      renderBody(`::faults{from=power-off only="${only}"}`, flyTrial({ power }));
    const both = 'stopped-not-idle glide-slow';
    expect(rows('idle', both).html).toContain('Engine stopped where idling was practised');
    expect(rows('stopped', both).html).not.toContain('Engine stopped where idling was practised');
    expect(rows('stopped', both).html).toContain('Glide speed too low');
    const none = rows('stopped', 'stopped-not-idle');
    expect(none.messages).toEqual([]);
    expect(none.html).not.toContain('<table');
  });

  it('gives no figure where the model is not honest, and says why', () => {
    const words = flown('touchdown speed: +10 %');
    expect(words).toContain('bounce, is not in the model.');
    expect(words).not.toMatch(/bounce[^.]*\d/);
  });

  it('sends nobody into an S-turn that is not complete by 300 ft, or by more where the school asks for it', () => {
    const wind = { from: degrees(210), speed: knots(12) };
    const begun = (fly: string, changes: Parameters<typeof flyTrial>[0] = {}) => {
      const words = flown(fly, { wind, ...changes });
      return Number(
        /S-turn on final (?:still makes the spot|does) if begun on this path at (\d+) ft/.exec(words)?.[1],
      );
    };
    for (const fly of ['final height: +30 ft', 'final height: +50 ft']) {
      // A turn takes height: begun at 300 ft, none is complete by 300 ft.
      expect(begun(fly)).toBeGreaterThan(330);
      expect(begun(fly, { minimums: { finalTurn: 400 * 0.3048 } })).toBeGreaterThan(430);
    }
  });
});
