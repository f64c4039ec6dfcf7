import { groups } from '../../../components/list.ts';
import { colonsOf } from '../../lesson/directive-form.ts';
import { papers } from '../../press/paper/paper.ts';
import { lessonHead, schoolFiles } from '../../reference/definitions.ts';
import { flyWords } from '../../reference/fly-words.ts';
import { snippetFile } from '../../reference/snippets.ts';
import { type DescribedSchema, describeSchema } from '../../school/json-schema.ts';
import { keyNames } from '../../words/keys/key-names.ts';
import type { DirectiveWord, FileKind, PagePaper, Value, Word, WordsAnswer } from '../api.ts';
import type { LiveSchool } from './live-school.ts';

/** What is the same for every school: made once, from the definitions that check what is typed. */
type OfLanguage = Pick<WordsAnswer, 'directives' | 'keys' | 'flies' | 'positions' | 'papers'>;

let ofLanguage: OfLanguage | undefined;

/** All that an editor may complete in the files of a school. `lessons`: ids. */
export function wordsFor({ withSoundAircraft: school }: LiveSchool, lessons: readonly string[]): WordsAnswer {
  ofLanguage ??= language();
  if (!school) return { ...ofLanguage, aircraft: [], airfields: [], faults: [], lessons };
  return {
    ...ofLanguage,
    aircraft: [...school.fleet].map(([id, { name, class: kind, glide }]) => ({
      id,
      name,
      class: kind,
      powers: glide.stopped ? ['idle', 'stopped'] : ['idle'],
    })),
    airfields: [...school.airfields].map(([id, { name, runways }]) => ({
      id,
      name,
      runways: runways.map((runway) => runway.name),
    })),
    faults: [...school.faults].map(([id, { name, faults }]) => ({
      id,
      name,
      rows: faults.map((row) => ({ id: row.id, name: row.fault })),
    })),
    lessons,
    paper: school.paper,
  };
}

function language(): OfLanguage {
  const { aircraft, airfield, faults, school } = schoolFiles;
  const definitions: Record<FileKind, { definition: Parameters<typeof describeSchema>[0] }> = {
    lesson: lessonHead,
    school,
    aircraft,
    airfield,
    faults,
  };
  return {
    directives: directives(),
    keys: Object.fromEntries(
      Object.entries(definitions).map(([kind, { definition }]) => [
        kind,
        wordsOf(describeSchema(definition)),
      ]),
    ) as Record<FileKind, Word[]>,
    flies: flyWords,
    positions: Object.entries(keyNames).map(([id, name]) => ({ id, name })),
    papers: Object.keys(papers) as PagePaper[],
  };
}

function directives(): DirectiveWord[] {
  const snippets = Object.values(
    JSON.parse(snippetFile(groups.flatMap(({ components }) => components)).content) as Record<
      string,
      { readonly prefix: string; readonly body: readonly string[] }
    >,
  );
  return groups.flatMap(({ title, components }) =>
    components.map(
      ({ name, form, summary, attributes, label, holdsText = false, example }): DirectiveWord => {
        const colons = colonsOf[form];
        return {
          name,
          form,
          colons,
          group: title,
          summary,
          attributes: wordsOf(describeSchema(attributes)),
          label: label && valuesOf(describeSchema(label)),
          holdsText,
          example,
          snippet: (snippets.find(({ prefix }) => prefix === colons + name)?.body ?? []).join('\n'),
        };
      },
    ),
  );
}

function wordsOf({ properties = {}, required = [] }: DescribedSchema): Word[] {
  return Object.entries(properties).map(([name, schema]): Word => {
    const inside = wordsOf(schema.items ?? schema);
    const values = valuesOf(schema.anyOf?.[0] ?? schema.items ?? schema);
    return {
      name,
      summary: schema.description ?? '',
      needed: required.includes(name),
      takes: schema.takes ?? schema.anyOf?.[0]?.takes ?? schema.items?.takes,
      values: values.length > 0 ? values : undefined,
      sample: schema.sample,
      usual: typeof schema.default === 'string' ? schema.default : undefined,
      words: inside.length > 0 ? inside : undefined,
      isList: schema.items !== undefined,
    };
  });
}

function valuesOf({ enum: choices, meanings = {} }: DescribedSchema): Value[] {
  // A choice such as 90 is in a schema twice: as a number and as text.
  const names = choices ? new Set(choices.map(String)) : Object.keys(meanings);
  return [...names].map((value) => ({ value, meaning: meanings[value] }));
}
