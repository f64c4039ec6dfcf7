import { describe, expect, it } from 'vitest';
import { codeFrame } from './code-frame.ts';

describe('a code frame', () => {
  it('shows the line with its number, and carets under the place', () => {
    expect(codeFrame('a\nAt :kye[final] now.\n', { line: 2, column: 4, end: 8 })).toEqual([
      '2 | At :kye[final] now.',
      '  |    ^^^^',
    ]);
  });

  it('keeps its place where there are tabs, and in a file with Windows line ends', () => {
    expect(codeFrame('one\r\n\twrong\r\n', { line: 2, column: 2, end: 7 })).toEqual([
      '2 |  wrong',
      '  |  ^^^^^',
    ]);
  });

  it('has one caret at least: on an empty line, and where something is missing at the end', () => {
    expect(codeFrame('\n', { line: 1, column: 1, end: 1 })).toEqual(['1 |', '  | ^']);
    expect(codeFrame('ab', { line: 1, column: 3, end: 3 })).toEqual(['1 | ab', '  |   ^']);
  });

  it('cuts a long line around the place', () => {
    const text = `${'a'.repeat(150)}wrong${'b'.repeat(150)}`;
    const [shown, carets] = codeFrame(text, { line: 1, column: 151, end: 156 });
    expect(shown!.length).toBeLessThan(112);
    expect(shown!.slice(carets!.indexOf('^'), carets!.lastIndexOf('^') + 1)).toBe('wrong');
    expect(shown).toMatch(/… a+wrongb+ …$/);
  });

  it('does not run over the end of the line', () => {
    expect(codeFrame('short\nnext', { line: 1, column: 3, end: 40 })[1]).toBe('  |   ^^^');
  });

  it('is nothing where there is no such line', () =>
    expect(codeFrame('a', { line: 9, column: 1, end: 2 })).toEqual([]));
});
