import { describe, expect, it } from 'vitest';
import { components } from './list.ts';
import { feetAndKnots, flyTrial, renderBody } from './trial-packet.ts';

const plan = flyTrial();
/** For a directive that belongs to one approach alone. */
const flownFor: Readonly<Record<string, typeof plan>> = { 'circle-banks': flyTrial({ approach: '360' }) };
const editions = ['student', 'instructor'] as const;

describe('the directives', () => {
  it('have names of their own: one for each form', () => {
    const names = components.map(({ name, form }) => `${form} ${name}`);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(components.map((component) => [component.name, component] as const))(
    '`%s`: its example works as typed',
    (_, component) => {
      const pages = editions.map((edition) =>
        renderBody(component.example, flownFor[component.name] ?? plan, feetAndKnots, edition),
      );
      expect(pages.flatMap(({ messages }) => messages)).toEqual([]);
      expect(pages.map(({ html }) => html.replace(/<[^>]*>/g, '').trim()).join('')).not.toBe('');
    },
  );
});
