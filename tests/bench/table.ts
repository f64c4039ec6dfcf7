/** What was measured, the figure, and a remark. */
export type Line = readonly [what: string, figure: string, remark: string];

export function outcome(target: string, met: boolean): string {
  return `target ${target}: ${met ? 'met' : 'MISSED'}`;
}

export function tableOf(lines: readonly Line[]): string {
  const [first, second] = [0, 1].map((column) => Math.max(...lines.map((line) => line[column]!.length)));
  return lines
    .map(([what, figure, remark]) =>
      `${what.padEnd(first!)}  ${figure.padStart(second!)}  ${remark}`.trimEnd(),
    )
    .join('\n');
}
