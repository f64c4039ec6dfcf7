import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { z } from 'zod';
import { type Component, DirectiveError, defineComponent } from '../src/lesson/component.ts';
import { type PlanPart, planParts } from '../src/lesson/plan-parts.ts';
import type { PacketContext } from './context.ts';

export interface LessonPart {
  readonly name: PlanPart;
  readonly summary: string;
  /** One line that an author may write in it. */
  readonly line: string;
}

/** A part of a lesson plan: a section under its standard heading. */
export function lessonPart({ name, summary, line }: LessonPart): Component<PacketContext> {
  return defineComponent<PacketContext, z.ZodType>({
    name,
    form: 'container',
    summary,
    attributes: z.strictObject({}),
    example: `:::${name}\n${line}\n:::`,
    render: ({ children }) => [
      h('section', { className: ['part', name] }, [
        h('h2', planParts[name]),
        ...needsContent(name, children),
      ]),
    ],
  });
}

/** A container that says nothing was not meant to be there. */
export function needsContent(name: string, children: readonly ElementContent[]): readonly ElementContent[] {
  if (children.some((child) => child.type !== 'text' || child.value.trim() !== '')) return children;
  throw new DirectiveError(`\`${name}\` is empty: write its text between \`:::${name}\` and \`:::\``);
}
