import { nearestName } from '../school/nearest-name.ts';
import type { Component } from './component.ts';
import { nameList, rightForm } from './directive-form.ts';

type Named = Pick<Component<never>, 'name' | 'form'>;

/** Says that there is no such directive, which is nearest, and how a colon that is only a colon is typed. */
export function unknownDirective(name: string, components: readonly Named[]): string {
  const names = components.map((component) => component.name);
  const near = components.find((component) => component.name === nearestName(name, names));
  const hint = near ? `did you mean ${rightForm(near)}?` : `there are ${nameList(names)}.`;
  return `No directive is called \`${name}\`; ${hint} For a plain colon type \`\\:\``;
}
