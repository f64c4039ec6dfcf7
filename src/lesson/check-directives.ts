import type { Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import { fail } from '../messages/failures.ts';
import { lineEndAt, spanAt } from '../messages/source-place.ts';
import type { Component, Form } from './component.ts';
import { describeAttributeIssues, describeLabelIssue } from './describe-issue.ts';
import { rightForm } from './directive-form.ts';
import type { ContainerDirective, LeafDirective, TextDirective } from './directive-nodes.ts';
import { locateDirective } from './directive-source.ts';
import { unknownDirective } from './unknown-directive.ts';

export type DirectiveNode = ContainerDirective | LeafDirective | TextDirective;

/** One use of a directive that was found right: all that is left is to render it. */
export interface CheckedUse<Context> {
  readonly node: DirectiveNode;
  readonly component: Component<Context>;
  /** As the component's schema gave them, defaults filled in. */
  readonly attributes: unknown;
  readonly label: string;
  /** Counts from 1 the uses of this directive in the lesson. */
  readonly ordinal: number;
}

const formOf: Readonly<Record<DirectiveNode['type'], Form>> = {
  textDirective: 'text',
  leafDirective: 'leaf',
  containerDirective: 'container',
};

/** True where the brackets of a directive in a sentence hold lesson text instead of a label. */
export function holdsText(
  { name }: DirectiveNode,
  components: readonly Pick<Component<never>, 'name' | 'form' | 'holdsText'>[],
): boolean {
  return components.some((each) => each.name === name && each.form === 'text' && each.holdsText === true);
}

export function isDirective(node: { readonly type: string }): node is DirectiveNode {
  return node.type in formOf;
}

/** Checks every directive of the tree against its definition and reports each mistake; gives the uses that are right. */
export function checkDirectives<Context>(
  tree: Root,
  file: VFile,
  components: readonly Component<Context>[],
): CheckedUse<Context>[] {
  const source = String(file);
  const uses: CheckedUse<Context>[] = [];
  const counts = new Map<string, number>();
  visit(tree, (node) => {
    if (!isDirective(node)) return;
    const checked = checkDirective(node, source, file, components);
    if (checked) {
      const ordinal = (counts.get(node.name) ?? 0) + 1;
      counts.set(node.name, ordinal);
      uses.push({ node, ordinal, ...checked });
    }
    // The brackets of a directive in a sentence hold its label, read as it was typed, or lesson text.
    return node.type === 'textDirective' && !holdsText(node, components) ? SKIP : undefined;
  });
  return uses;
}

function checkDirective<Context>(
  node: DirectiveNode,
  source: string,
  file: VFile,
  components: readonly Component<Context>[],
): Pick<CheckedUse<Context>, 'component' | 'attributes' | 'label'> | undefined {
  const start = node.position?.start.offset ?? 0;
  const nodeEnd = node.position?.end.offset ?? source.length;
  const end = node.type === 'containerDirective' ? Math.min(lineEndAt(source, start), nodeEnd) : nodeEnd;
  const parts = locateDirective(source, start, end);
  const place = spanAt(source, start, end);

  const named = components.filter(({ name }) => name === node.name);
  if (named.length === 0) {
    fail(file, unknownDirective(node.name, formOf[node.type], components), 'unknown-directive', place);
    return undefined;
  }
  const component = named.find(({ form }) => form === formOf[node.type]);
  if (!component) {
    fail(file, `\`${node.name}\` is written ${named.map(rightForm).join(', or ')}`, 'directive-form', place);
    return undefined;
  }
  if (parts.unread) {
    const closing = parts.unread === '[' ? 'The `[` is not closed by a `]`' : 'The braces cannot be read';
    fail(file, `${closing}; an example that is right: \`${component.example}\``, 'directive-syntax', place);
    return undefined;
  }

  let right = true;
  const wrong = (rule: string, reason: string, from: number, to: number) => {
    right = false;
    fail(file, reason, rule, spanAt(source, from, to));
  };

  const label = parts.label ? source.slice(parts.label.start, parts.label.end) : '';
  const labelStart = parts.label?.start ?? parts.name.start;
  const labelEnd = parts.label?.end ?? parts.name.end;
  const labelResult = component.label?.safeParse(label);
  if (!component.label && !component.holdsText && parts.label) {
    wrong(
      'directive-label',
      `\`${node.name}\` takes no text in brackets; leave the brackets out`,
      labelStart - 1,
      labelEnd + 1,
    );
  } else if (labelResult && !labelResult.success) {
    wrong('directive-label', describeLabelIssue(node.name, label, labelResult.error), labelStart, labelEnd);
  }

  const names = parts.attributes.map(({ name }) => name);
  for (const [index, attribute] of parts.attributes.entries()) {
    if (names.indexOf(attribute.name) === index) continue;
    wrong(
      'directive-attribute',
      `\`${attribute.name}\` is given twice; keep one of them`,
      attribute.start,
      attribute.end,
    );
  }
  const given = Object.fromEntries(
    Object.entries(node.attributes ?? {}).map(([name, value]) => [name, value ?? '']),
  );
  for (const attribute of parts.attributes) {
    // The parser keeps attributes in a plain object, where `__proto__` is lost.
    if (attribute.name !== '__proto__') continue;
    const reason = `\`${node.name}\` has no attribute \`__proto__\`; leave it out`;
    wrong('directive-attribute', reason, attribute.start, attribute.end);
  }
  const result = component.attributes.safeParse(given);
  if (!result.success) {
    for (const problem of describeAttributeIssues(node.name, result.error, component.attributes, given)) {
      const at = parts.attributes.find(({ name }) => name === problem.attribute) ?? parts.name;
      wrong('directive-attribute', problem.reason, at.start, at.end);
    }
  }
  if (!right || !result.success) return undefined;
  return { component, attributes: result.data, label: labelResult?.data ?? '' };
}
