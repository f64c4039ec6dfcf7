import { z } from 'zod';
import type { PacketContext } from '../../components/context.ts';
import type { DirectiveGroup } from '../../components/list.ts';
import type { ApproachMethod } from '../../src/flight/approaches/approach-method.ts';
import { approaches } from '../../src/flight/approaches/approaches.ts';
import type { FaultMethod } from '../../src/flight/faults/fault-method.ts';
import { faultMethods } from '../../src/flight/faults/list.ts';
import { type Component, defineComponent } from '../../src/lesson/component.ts';
import { classNames } from '../../src/words/aircraft/class-names.ts';
import { approachNames } from '../../src/words/approaches/approach-names.ts';

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

// An approach, a fault or a class of aircraft with a part missing: in the list, or in its words.

const method: ApproachMethod = approaches['180'];
const { startsAt: _startsAt, ...unstarted } = method;
const { finds: _finds, ...unfinding } = method;
const { solve: _solve, ...unsolved } = method;
const { spiral: _spiral, ...threeMethods } = approaches;
const { spiral: _names, ...threeNames } = approachNames;
// @ts-expect-error: without the key at which it starts
export const a: ApproachMethod = unstarted;
// @ts-expect-error: without what it finds
export const b: ApproachMethod = unfinding;
// @ts-expect-error: without how that is found
export const c: ApproachMethod = unsolved;
// @ts-expect-error: without its row
export const d: typeof approaches = threeMethods;
// @ts-expect-error: without its words
export const e: typeof approachNames = threeNames;

const { make: _make, ...unmade } = faultMethods.spacing;
const { madeOn: _madeOn, ...nowhere } = faultMethods.spacing;
const { spacing: _spacing, ...fewerFaults } = faultMethods;
// @ts-expect-error: without what it does
export const f: FaultMethod<'spacing'> = unmade;
// @ts-expect-error: without where it is made
export const g: FaultMethod<'spacing'> = nowhere;
// @ts-expect-error: without its row
export const h: typeof faultMethods = fewerFaults;

const { glider: _glider, ...fewerClasses } = classNames;
// @ts-expect-error: without its name
export const i: typeof classNames = fewerClasses;
