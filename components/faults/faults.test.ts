import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import type { FaultsFile } from '../../src/school/faults.ts';
import { contextOf, flyTrial, renderBody } from '../trial-packet.ts';
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
