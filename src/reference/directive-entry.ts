import type { PacketContext } from '../../components/context.ts';
import type { Component, Form } from '../lesson/component.ts';
import { describeSchema } from '../school/json-schema.ts';
import { capital } from '../words/figures/letter-case.ts';
import { toWrite } from './key-table.ts';
import { code, fenced, sentence, table } from './markdown.ts';

type Directive = Component<PacketContext>;

const places: Readonly<Record<Form, string>> = {
  text: 'in a sentence',
  leaf: 'on a line of its own',
  container: 'around text',
};

/** The forms of one directive, as blocks of Markdown under one heading. */
export function directiveEntry(name: string, forms: readonly Directive[]): string[] {
  const several = forms.length > 1;
  return [
    `### ${code(name)}`,
    ...forms.flatMap((directive) => [
      `${several ? `${capital(places[directive.form])}: ` : ''}${sentence(directive.summary)}`,
      ...bracketWords(directive),
      ...attributeTable(directive),
      fenced('markdown', directive.example),
    ]),
  ];
}

function bracketWords({ label, holdsText }: Directive): string[] {
  if (holdsText) return ['In its brackets stand the words themselves.'];
  if (!label) return [];
  const schema = describeSchema(label);
  if (schema.meanings) return [table(['In brackets', 'What it gives'], meaningRows(schema.meanings))];
  return [
    `In its brackets stands one of ${(schema.enum ?? []).map((name) => code(String(name))).join(', ')}.`,
  ];
}

function attributeTable({ attributes }: Directive): string[] {
  const { properties = {}, required = [] } = describeSchema(attributes);
  const rows = Object.entries(properties).map(([name, schema]) => [
    code(name),
    sentence(schema.description ?? ''),
    toWrite(schema, required.includes(name)),
  ]);
  const explained = Object.entries(properties).flatMap(([name, { meanings }]) =>
    meanings ? [table([`With ${code(name)}`, 'What it gives'], meaningRows(meanings))] : [],
  );
  return rows.length === 0 ? [] : [table(['In braces', 'What it is', 'What to write'], rows), ...explained];
}

function meaningRows(meanings: Readonly<Record<string, string>>): string[][] {
  return Object.entries(meanings).map(([name, meaning]) => [code(name), meaning]);
}

/** The heads of a page's contents: each name once, with its forms in their order. */
export function byName(directives: readonly Directive[]): Map<string, Directive[]> {
  const found = new Map<string, Directive[]>();
  for (const each of directives) found.set(each.name, [...(found.get(each.name) ?? []), each]);
  return found;
}
