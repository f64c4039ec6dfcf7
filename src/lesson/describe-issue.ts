import { z } from 'zod';
import { nearestName } from '../messages/nearest-name.ts';
import { nameList } from './directive-form.ts';

/** What is wrong with one attribute of a directive: its name, and a sentence that says what to type instead. */
export interface AttributeProblem {
  readonly attribute: string | undefined;
  readonly reason: string;
}

/** The attributes a directive takes, by its schema. */
function attributeNames(schema: z.ZodType): string[] {
  return schema instanceof z.ZodObject ? Object.keys(schema.shape) : [];
}

/** One problem for each thing that the schema refuses in the braces of `directive`. */
export function describeAttributeIssues(
  directive: string,
  error: z.ZodError,
  schema: z.ZodType,
  input: Readonly<Record<string, unknown>>,
): AttributeProblem[] {
  const names = attributeNames(schema);
  return error.issues.flatMap((issue): AttributeProblem[] => {
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => ({ attribute: key, reason: unknownAttribute(directive, key, names) }));
    }
    const attribute = issue.path.length > 0 ? String(issue.path[0]) : undefined;
    const named = attribute ?? directive;
    if (attribute && input[attribute] === undefined) {
      return [
        {
          attribute: undefined,
          reason: `\`${directive}\` needs \`${attribute}=…\` in its braces: ${issue.message}`,
        },
      ];
    }
    return [{ attribute, reason: describeValue(named, attribute ? input[attribute] : input, issue) }];
  });
}

/** What is wrong with the text in brackets. */
export function describeLabelIssue(directive: string, label: string, error: z.ZodError): string {
  return error.issues.map((issue) => describeValue(`${directive}[…]`, label, issue)).join('; ');
}

function unknownAttribute(directive: string, key: string, names: readonly string[]): string {
  if (names.length === 0) return `\`${directive}\` takes no attributes; leave \`${key}\` and its braces out`;
  const near = nearestName(key, names);
  const hint = near ? `; did you mean \`${near}\`?` : '.';
  return `\`${directive}\` has no attribute \`${key}\`${hint} It takes ${nameList(names)}`;
}

function describeValue(named: string, value: unknown, issue: z.core.$ZodIssue): string {
  if (issue.code !== 'invalid_value') return `\`${named}\` cannot be \`${String(value)}\`: ${issue.message}`;
  const values = issue.values.map(String);
  const near = typeof value === 'string' ? nearestName(value, values) : undefined;
  const hint = near ? `; did you mean \`${near}\`?` : '.';
  return `\`${named}\` cannot be \`${String(value)}\`${hint} It can be ${nameList(values)}`;
}
