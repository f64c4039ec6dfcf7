import { z } from 'zod';
import type { PacketContext } from '../../components/context.ts';
import type { DirectiveGroup } from '../../components/list.ts';
import { type Component, defineComponent } from '../../src/lesson/component.ts';

/*
 * Definitions that the compiler refuses. None of this runs: where it lets one of them through, the line above it is
 * an error, and the check of types fails.
 */

const whole: Component<PacketContext> = {
  name: 'whole',
  form: 'leaf',
  summary: 'All that a definition must have.',
  attributes: z.strictObject({}),
  example: '::whole',
  render: () => [],
};

const { name: _name, ...nameless } = whole;
const { form: _form, ...formless } = whole;
const { summary: _summary, ...unexplained } = whole;
const { attributes: _attributes, ...unchecked } = whole;
const { example: _example, ...unshown } = whole;
const { render: _render, ...empty } = whole;

// @ts-expect-error: without its name
defineComponent(nameless);
// @ts-expect-error: without how it is written
defineComponent(formless);
// @ts-expect-error: without its line in the reference and in the editor
defineComponent(unexplained);
// @ts-expect-error: without what may be written in its braces
defineComponent(unchecked);
// @ts-expect-error: without an example
defineComponent(unshown);
// @ts-expect-error: without what it prints
defineComponent(empty);
// @ts-expect-error: a form that there is not
defineComponent({ ...whole, form: 'line' });
// @ts-expect-error: something that no page does on a screen
defineComponent({ ...whole, onScreen: 'made-once' });

// @ts-expect-error: no definition gets into the list with a part missing
export const group: DirectiveGroup = { title: 'Trial', about: 'None.', components: [empty] };

const attributes = z.strictObject({ count: z.number() });
defineComponent<PacketContext, typeof attributes>({
  ...whole,
  attributes,
  // @ts-expect-error: an attribute that its own schema does not give
  render: (use) => [{ type: 'text', value: use.attributes.colour }],
});
