import type { Element, ElementContent, Root } from 'hast';
import { visit } from 'unist-util-visit';

/**
 * Puts the items of the lesson's `:::standards` into its `::debrief` forms in place of the general lines; in a lesson
 * without standards those stay. Done when the whole page is there, so that the form may be anywhere in the lesson.
 */
export function gradeStandards(page: Root): void {
  const standards: Element[] = [];
  const forms: Element[] = [];
  visit(page, 'element', (node) => {
    if (node.tagName === 'section' && hasClass(node, 'standards')) standards.push(node);
    if (node.tagName === 'tbody' && hasClass(node, 'grades')) forms.push(node);
  });
  const lines = standards.flatMap(linesOf);
  if (lines.length === 0) return;
  for (const form of forms) {
    const [row] = form.children as Element[];
    const [head, ...boxes] = (row?.children ?? []) as Element[];
    if (!row || !head) continue;
    form.children = lines.map((line) => {
      const standard = { ...head, children: structuredClone(line) };
      return { ...row, children: [standard, ...structuredClone(boxes)] };
    });
  }
}

function hasClass({ properties: { className } }: Element, name: string): boolean {
  return Array.isArray(className) && className.includes(name);
}

/** The content of each item of its lists; where it has no list, of each paragraph. */
function linesOf(section: Element): ElementContent[][] {
  const found = (tagName: string) => {
    const lines: ElementContent[][] = [];
    visit(section, 'element', (node) => {
      if (node.tagName === tagName) lines.push(inOneLine(node.children));
    });
    return lines;
  };
  const items = found('li');
  return items.length > 0 ? items : found('p');
}

/** Paragraphs of a loose list come as their text; a copy keeps no id, because an id must be unique. */
function inOneLine(children: readonly ElementContent[]): ElementContent[] {
  const line = structuredClone(
    children
      .filter((child) => child.type !== 'element' || !/^[uo]l$/.test(child.tagName))
      .flatMap((child) => (child.type === 'element' && child.tagName === 'p' ? child.children : [child])),
  );
  visit({ type: 'root', children: line } as Root, 'element', (node) => {
    delete node.properties.id;
  });
  return line;
}
