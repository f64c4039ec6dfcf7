import type { Element, ElementContent } from 'hast';
import { hasClass } from '../document-tree.ts';
import { wordsOf } from './words.ts';
import { hang, wrap } from './wrap.ts';

interface Cell {
  readonly text: string;
  readonly isHead: boolean;
  readonly isNumber: boolean;
  /** Left empty, to be filled in with a pen. */
  readonly isToFill: boolean;
  /** Its first column and row, and how many of both. */
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
}

interface Row {
  /** What is in each of its columns; a cell that spans several is in each of them. */
  readonly cells: readonly (Cell | undefined)[];
  readonly isHead: boolean;
}

const gap = '  ';

/**
 * A table in columns; where these are wider than the page, one block for each row, with each figure after the name of
 * its column.
 */
export function tableText(table: Element, width: number): string {
  const caption = table.children.find((child) => child.type === 'element' && child.tagName === 'caption');
  const rows = rowsOf(table);
  const text = inColumns(rows, width) ?? inBlocks(rows, width);
  const said = caption?.type === 'element' ? wordsOf(caption.children) : '';
  return said === '' ? text : `${wrap(said, width)}\n\n${text}`;
}

function rowsOf(table: Element): Row[] {
  const found: { row: Element; isHead: boolean }[] = [];
  const collect = (content: readonly ElementContent[], isHead: boolean): void => {
    for (const each of content) {
      if (each.type !== 'element') continue;
      if (each.tagName === 'tr') found.push({ row: each, isHead });
      else collect(each.children, each.tagName === 'thead');
    }
  };
  collect(table.children, false);
  const grid: (Cell | undefined)[][] = found.map(() => []);
  for (const [row, each] of found.entries()) {
    let column = 0;
    for (const child of each.row.children) {
      if (child.type !== 'element') continue;
      while (grid[row]![column]) column += 1;
      const columns = Number(child.properties.colSpan ?? 1);
      const rows = Math.min(Number(child.properties.rowSpan ?? 1), found.length - row);
      const cell: Cell = {
        text: wordsOf(child.children),
        isHead: child.tagName === 'th',
        isNumber: hasClass(child, 'number'),
        isToFill: hasClass(child, 'to-fill') || holdsTickBox(child),
        ...{ column, row, columns, rows },
      };
      for (let down = 0; down < rows; down += 1)
        for (let along = 0; along < columns; along += 1) grid[row + down]![column + along] = cell;
      column += columns;
    }
  }
  return grid.map((cells, at) => ({ cells, isHead: found[at]!.isHead }));
}

function holdsTickBox({ children }: Element): boolean {
  return children.some((child) => child.type === 'element' && hasClass(child, 'tick-box'));
}

/** Each once, in order. */
function once(cells: readonly (Cell | undefined)[]): Cell[] {
  return [...new Set(cells)].filter((cell) => cell !== undefined);
}

/** A line across the whole table: it says something about the row above, or names those below. */
function acrossAll({ cells }: Row, count: number): Cell | undefined {
  const [only, ...others] = once(cells);
  return count > 1 && others.length === 0 && only && only.columns >= count ? only : undefined;
}

function inColumns(rows: readonly Row[], width: number): string | undefined {
  const count = Math.max(0, ...rows.map(({ cells }) => cells.length));
  const widths = Array.from({ length: count }, () => 0);
  const roomOf = ({ column, columns }: Cell) =>
    widths.slice(column, column + columns).reduce((sum, each) => sum + each + gap.length, -gap.length);
  const cells = once(rows.filter((row) => !acrossAll(row, count)).flatMap((row) => row.cells));
  // The narrow cells first: those that span several columns take the room there is, and more only where they must.
  for (const cell of cells.sort((a, b) => a.columns - b.columns)) {
    const last = cell.column + cell.columns - 1;
    widths[last]! += Math.max(0, cell.text.length - roomOf(cell));
  }
  if (roomOf({ column: 0, columns: count } as Cell) > width) return undefined;
  return rows
    .map((row, at) => {
      const across = acrossAll(row, count);
      if (across) return wrap(across.text, width);
      const line = once(row.cells).map((cell) => {
        const text = cell.row === at ? cell.text : '';
        return cell.isNumber ? text.padStart(roomOf(cell)) : text.padEnd(roomOf(cell));
      });
      return line.join(gap).replaceAll('\u00a0', ' ').trimEnd();
    })
    .join('\n');
}

function inBlocks(rows: readonly Row[], width: number): string {
  const count = Math.max(0, ...rows.map(({ cells }) => cells.length));
  const heads = rows.filter(({ isHead }) => isHead);
  const nameOf = ({ column, columns }: Cell): string => {
    const names = heads.flatMap(({ cells }) => once(cells.slice(column, column + columns)));
    return [...new Set(names)]
      .map(({ text }) => text)
      .filter((text) => text !== '')
      .join(', ');
  };
  const blocks: string[] = [];
  for (const row of rows) {
    if (row.isHead) continue;
    const across = acrossAll(row, count);
    const [first, ...others] = once(row.cells);
    if (!first) continue;
    if (across) {
      // What is said about a row stays with it; a heading begins something new.
      if (across.isHead || blocks.length === 0) blocks.push(wrap(across.text, width));
      else blocks[blocks.length - 1] += `\n${hang('  ', wrap(across.text, width - 2))}`;
      continue;
    }
    const lines = others
      .filter(({ text }) => text !== '')
      .map((cell) => (nameOf(cell) === '' ? cell.text : `${nameOf(cell)}: ${cell.text}`));
    const toFill = others.filter(({ isToFill }) => isToFill).map(nameOf);
    if (toFill.length > 0) lines.push(`To fill in: ${toFill.join(', ')}`);
    const set = lines.map((line) => `  ${wrap(line, width - 2, '    ')}`);
    blocks.push([wrap(first.text, width), ...set].join('\n'));
  }
  return blocks.join('\n\n');
}
