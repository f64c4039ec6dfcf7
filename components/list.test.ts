import { describe, expect, it } from 'vitest';
import { components } from './list.ts';
import { flyTrial, renderBody } from './trial-packet.ts';

const plan = flyTrial();

describe('the directives', () => {
  it('have names of their own', () => {
    const names = components.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(components.map((component) => [component.name, component] as const))(
    '`%s`: its example works as typed',
    (_, component) => {
      const { html, messages } = renderBody(component.example, plan);
      expect(messages).toEqual([]);
      expect(html.replace(/<[^>]*>/g, '').trim()).not.toBe('');
    },
  );
});
