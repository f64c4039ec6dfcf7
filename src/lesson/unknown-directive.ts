import { nearestName } from '../messages/nearest-name.ts';
import type { Component, Form } from './component.ts';
import { colonsOf, nameList, rightForm } from './directive-form.ts';

type Named = Pick<Component<never>, 'name' | 'form'>;

/**
 * Says that there is no such directive, which one is nearest, and how to type a colon that is only a colon. Where
 * none is near, it lists those written in the same form.
 */
export function unknownDirective(name: string, form: Form, components: readonly Named[]): string {
  const names = [...new Set(components.map((component) => component.name))];
  const near = components.find((component) => component.name === nearestName(name, names));
  const alike = components.filter((component) => component.form === form).map((component) => component.name);
  const known = `with \`${colonsOf[form]}\` there are ${nameList(alike)}.`;
  const hint = near
    ? `did you mean ${rightForm(near)}?`
    : alike.length > 0
      ? known
      : `there are ${nameList(names)}.`;
  return `No directive is called \`${name}\`; ${hint} For a plain colon type \`\\:\``;
}
