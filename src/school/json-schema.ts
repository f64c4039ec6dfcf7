import { z } from 'zod';
import { wordsForm } from './written-form.ts';

/** A JSON Schema, as much of it as the definitions here use, with the words of `written-form.ts` still separate. */
export interface DescribedSchema {
  readonly description?: string;
  /** What may be typed here, as `WrittenForm` says it. */
  readonly takes?: string;
  /** As an author would type it. */
  readonly sample?: string;
  /** What each of the names of `enum` gives, where a definition says so. */
  readonly meanings?: Readonly<Record<string, string>>;
  readonly default?: unknown;
  readonly enum?: readonly (string | number)[];
  readonly properties?: Readonly<Record<string, DescribedSchema>>;
  readonly required?: readonly string[];
  readonly items?: DescribedSchema;
  readonly anyOf?: readonly DescribedSchema[];
  readonly [keyword: string]: unknown;
}

/** What may be typed for a definition, described. */
export function describeSchema(schema: z.ZodType): DescribedSchema {
  return z.toJSONSchema(schema, {
    io: 'input',
    target: 'draft-7',
    unrepresentable: 'any',
    override: ({ jsonSchema }) => {
      // A definition that decides for itself how to read its input names another that reads the same.
      const { readsLike, ...rest } = jsonSchema as { readsLike?: z.ZodType };
      if (readsLike === undefined) return;
      const { $schema, ...like } = describeSchema(readsLike);
      for (const key of Object.keys(jsonSchema)) delete (jsonSchema as Record<string, unknown>)[key];
      Object.assign(jsonSchema, like, rest);
    },
  }) as DescribedSchema;
}

/** The JSON Schema of what may be typed for a definition: draft 7, the one that editors know best. */
export function jsonSchemaOf(schema: z.ZodType, about: { title: string; description: string }): object {
  const { $schema, ...body } = describeSchema(schema);
  return { $schema, ...about, ...(plain(body) as DescribedSchema) };
}

/** Leaves out the words of a form where they say less than the keyword. `true` and `false` are schemas too. */
function plain(schema: DescribedSchema | boolean): DescribedSchema | boolean {
  if (typeof schema === 'boolean') return schema;
  const { takes, sample, meanings, properties, items, anyOf, ...rest } = schema;
  const description = describe(rest.description, takes === wordsForm.takes ? undefined : takes);
  return {
    ...rest,
    ...(description === undefined ? {} : { description }),
    ...(sample === undefined ? {} : { examples: [exampleOf(sample, rest.type)] }),
    ...(properties && {
      properties: Object.fromEntries(Object.entries(properties).map(([key, each]) => [key, plain(each)])),
    }),
    ...(items && { items: plain(items) }),
    ...(anyOf && { anyOf: anyOf.map(plain) }),
  } as DescribedSchema;
}

function describe(description: string | undefined, takes: string | undefined): string | undefined {
  const form = takes === undefined ? undefined : `Write ${takes}.`;
  const parts = [description && `${description}.`, form].filter((part) => part !== undefined);
  return parts.length === 0 ? undefined : parts.join(' ');
}

/** `"24"` is how it is typed in YAML; the value is 24. */
function exampleOf(sample: string, type: unknown): string | number {
  if (Array.isArray(type) && type[0] === 'number') return Number(sample);
  return sample.replace(/^"(.*)"$/, '$1');
}
