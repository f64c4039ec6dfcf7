import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { describeAttributeIssues } from './describe-issue.ts';

const schema = z.strictObject({
  from: z.string('a file of `faults/`, such as `from=power-off`'),
  count: z.string().regex(/^\d+$/, 'write a whole number').optional(),
});

const problems = (input: Record<string, string>) => {
  const { error } = schema.safeParse(input);
  return error ? describeAttributeIssues('faults', error, schema, input) : [];
};

describe('what is wrong with attributes', () => {
  it('says which one is missing and how it is written', () => {
    expect(problems({})).toEqual([
      {
        attribute: undefined,
        reason: '`faults` needs `from=…` in its braces: a file of `faults/`, such as `from=power-off`',
      },
    ]);
  });

  it("passes on the schema's own words about a value", () => {
    expect(problems({ from: 'x', count: 'four' })).toEqual([
      { attribute: 'count', reason: '`count` cannot be `four`: write a whole number' },
    ]);
  });

  it('says where nothing at all may stand in braces', () => {
    const none = z.strictObject({});
    const { error } = none.safeParse({ wide: '' });
    expect(describeAttributeIssues('keys', error!, none, { wide: '' })).toEqual([
      { attribute: 'wide', reason: '`keys` takes no attributes; leave `wide` and its braces out' },
    ]);
  });
});
