import type { ElementContent } from 'hast';
import type { PacketContext } from '../../../components/context.ts';
import type { Component } from '../../lesson/component.ts';
import { canonicalJson } from '../../press/packet/fingerprint.ts';

/** What a directive came to: its content, or what it threw. */
type Outcome = { readonly content: ElementContent[] } | { readonly thrown: unknown };

/** How many outcomes a context keeps: many times what a lesson uses, and few enough for one that is edited for hours. */
const most = 500;

/**
 * The same directives, each remembering its outcomes. A directive is a function of its use alone, and a packet's
 * context is never changed: the same object means the same flight, edition and paper. A directive with other content
 * in it is made anew, because that content may be different.
 */
export function keepingRenders(components: readonly Component<PacketContext>[]): Component<PacketContext>[] {
  const kept = new WeakMap<PacketContext, Map<string, Outcome>>();
  return components.map((component) => ({
    ...component,
    render: (use) => {
      if (component.form === 'container' || component.holdsText) return component.render(use);
      const { attributes, label, ordinal, context } = use;
      const key = keyOf([component.name, component.form, label, ordinal, attributes]);
      if (key === undefined) return component.render(use);
      const outcomes = kept.get(context) ?? new Map<string, Outcome>();
      kept.set(context, outcomes);
      const outcome = outcomes.get(key) ?? outcomeOf(() => component.render(use));
      outcomes.delete(key);
      outcomes.set(key, outcome);
      if (outcomes.size > most) outcomes.delete(outcomes.keys().next().value!);
      if ('thrown' in outcome) throw outcome.thrown;
      // The press writes numbers and ids into what it gets, so it gets a copy.
      return outcome.content.map(copyOf);
    },
  }));
}

/** Many times faster than `structuredClone`: the text of a drawing is shared. */
function copyOf(node: ElementContent): ElementContent {
  if (node.type !== 'element') return { ...node };
  return { ...node, properties: { ...node.properties }, children: node.children.map(copyOf) };
}

function outcomeOf(render: () => ElementContent[]): Outcome {
  try {
    return { content: render() };
  } catch (thrown) {
    return { thrown };
  }
}

/** Undefined where the attributes are not plain data. */
function keyOf(parts: readonly unknown[]): string | undefined {
  try {
    return canonicalJson(parts);
  } catch (error) {
    if (error instanceof TypeError) return undefined;
    throw error;
  }
}
