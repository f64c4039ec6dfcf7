import type { PacketContext } from '../../../components/context.ts';
import { components } from '../../../components/list.ts';
import type { Component } from '../../lesson/component.ts';
import type { StudyUse } from './study-data.ts';

/** The definition that a use was printed from: the page holds the whole list of directives, and no other list. */
export function componentOf({ name, form }: Pick<StudyUse, 'name' | 'form'>): Component<PacketContext> {
  const found = components.find((each) => each.name === name && each.form === form);
  if (!found) throw new Error(`There is no directive ${name}`);
  return found;
}
