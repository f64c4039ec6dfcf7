import { getDocument, OPS, Util } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a test reads back from a printed PDF. Lengths in mm, with the origin at the top left of the page. */
export interface ReadPdf {
  readonly title: string | undefined;
  readonly language: string | undefined;
  readonly tagged: boolean;
  readonly bookmarks: readonly string[];
  readonly pages: readonly ReadPage[];
}

export interface PageWords {
  readonly width: number;
  readonly height: number;
  readonly text: string;
  readonly words: readonly PlacedText[];
}

export interface ReadPage extends PageWords {
  readonly fonts: readonly ReadFont[];
  readonly segments: readonly Segment[];
  /** What the page is to a screen reader: the tags of what is on it, in reading order. */
  readonly tags: readonly ReadTag[];
}

/** A structure element (ISO 32000-1, 14.8.4), the part of it that is on one page. */
export interface ReadTag {
  readonly role: string;
  /** The alternative text; undefined where it has none. */
  readonly alternative: string | undefined;
  /** All the text in it, including that of its children. */
  readonly text: string;
  readonly children: readonly ReadTag[];
}

interface PlacedText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

interface ReadFont {
  readonly name: string;
  readonly type: string;
  readonly embedded: boolean;
}

/** A straight piece of a stroked or filled path, as it is on paper. */
interface Segment {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly length: number;
}

const mmPerPoint = 25.4 / 72;

/** Reads a PDF with pdfjs: an eye outside the browser that printed it. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(bytes), fontExtraProperties: true, verbosity: 0 });
  const document = await task.promise;
  try {
    const { info } = await document.getMetadata();
    const about = info as Record<string, unknown>;
    const markInfo = await document.getMarkInfo();
    const outline = ((await document.getOutline()) ?? []) as OutlineEntry[];
    const pages: ReadPage[] = [];
    for (let number = 1; number <= document.numPages; number += 1)
      pages.push(await readPage(await document.getPage(number)));
    return {
      title: about.Title as string | undefined,
      language: about.Language as string | undefined,
      tagged: markInfo?.Marked === true,
      bookmarks: outline.flatMap(titles),
      pages,
    };
  } finally {
    await task.destroy();
  }
}

/** The words alone, and where they are: in a long PDF these are read sooner than the rest. */
export async function readWords(bytes: Uint8Array): Promise<PageWords[]> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const document = await task.promise;
  try {
    const pages: PageWords[] = [];
    for (let number = 1; number <= document.numPages; number += 1)
      pages.push(await wordsOn(await document.getPage(number)));
    return pages;
  } finally {
    await task.destroy();
  }
}

interface OutlineEntry {
  readonly title: string;
  readonly items: readonly OutlineEntry[];
}

function titles(entry: OutlineEntry): string[] {
  return [entry.title, ...entry.items.flatMap(titles)];
}

type PdfPage = Awaited<ReturnType<Awaited<ReturnType<typeof getDocument>['promise']>['getPage']>>;
type Matrix = [number, number, number, number, number, number];

async function wordsOn(page: PdfPage): Promise<PageWords> {
  const viewport = page.getViewport({ scale: 1 });
  const toPaper = viewport.transform as Matrix;
  const { items } = await page.getTextContent();
  const words: PlacedText[] = [];
  let text = '';
  for (const item of items) {
    if (!('str' in item)) continue;
    text += item.str + (item.hasEOL ? '\n' : '');
    const [x, y] = apply(toPaper, item.transform[4] as number, item.transform[5] as number);
    if (item.str.trim() !== '') words.push({ text: item.str, x, y });
  }
  return { width: viewport.width * mmPerPoint, height: viewport.height * mmPerPoint, text, words };
}

async function readPage(page: PdfPage): Promise<ReadPage> {
  const toPaper = page.getViewport({ scale: 1 }).transform as Matrix;
  const list = await page.getOperatorList();
  const fonts = new Map<string, ReadFont>();
  for (const [index, operator] of list.fnArray.entries()) {
    if (operator !== OPS.setFont) continue;
    const font = page.commonObjs.get(list.argsArray[index][0]) as {
      name: string;
      type: string;
      missingFile?: boolean;
    };
    fonts.set(font.name, { name: font.name, type: font.type, embedded: font.missingFile !== true });
  }
  return {
    ...(await wordsOn(page)),
    fonts: [...fonts.values()],
    segments: readSegments(list, toPaper),
    tags: await readTags(page),
  };
}

/** What pdfjs gives of a structure tree: elements, and the content that they mark. */
type StructureNode =
  | { readonly role: string; readonly alt?: string; readonly children: readonly StructureNode[] }
  | { readonly type: string; readonly id?: string };

async function readTags(page: PdfPage): Promise<ReadTag[]> {
  const tree = (await page.getStructTree()) as StructureNode | null;
  const { items } = await page.getTextContent({ includeMarkedContent: true });
  const marked = new Map<string, string>();
  const open: string[] = [];
  for (const item of items) {
    if ('str' in item) {
      const id = open.findLast((each) => each !== '');
      if (id !== undefined) marked.set(id, marked.get(id)! + item.str + (item.hasEOL ? ' ' : ''));
    } else if (item.type === 'endMarkedContent') open.pop();
    else {
      open.push(item.id ?? '');
      if (item.id && !marked.has(item.id)) marked.set(item.id, '');
    }
  }
  // pdfjs gives an element whole to every page that it reaches; the part of it on another page has nothing here.
  const liesHere = (node: StructureNode): boolean =>
    'role' in node ? node.children.some(liesHere) : marked.has(node.id ?? '');
  const textOf = (node: StructureNode): string =>
    'role' in node ? node.children.map(textOf).join('') : (marked.get(node.id ?? '') ?? '');
  const tagsOf = (nodes: readonly StructureNode[]): ReadTag[] =>
    nodes.flatMap((node) =>
      'role' in node && liesHere(node)
        ? [{ role: node.role, alternative: node.alt, text: textOf(node), children: tagsOf(node.children) }]
        : [],
    );
  return tree === null ? [] : tagsOf([tree]);
}

function apply(matrix: Matrix, x: number, y: number): [number, number] {
  const [a, b, c, d, e, f] = matrix;
  return [(a * x + c * y + e) * mmPerPoint, (b * x + d * y + f) * mmPerPoint];
}

function readSegments(list: Awaited<ReturnType<PdfPage['getOperatorList']>>, toPaper: Matrix): Segment[] {
  const segments: Segment[] = [];
  const saved: Matrix[] = [];
  let matrix = toPaper;
  for (const [index, operator] of list.fnArray.entries()) {
    const args = list.argsArray[index];
    if (operator === OPS.save) saved.push(matrix);
    else if (operator === OPS.restore) matrix = saved.pop() ?? toPaper;
    else if (operator === OPS.transform) matrix = Util.transform(matrix, args) as Matrix;
    else if (operator === OPS.paintFormXObjectBegin) {
      saved.push(matrix);
      if (args?.[0]) matrix = Util.transform(matrix, args[0]) as Matrix;
    } else if (operator === OPS.paintFormXObjectEnd) matrix = saved.pop() ?? toPaper;
    else if (operator === OPS.constructPath) {
      // A path that is neither stroked nor filled only clips.
      if (args[0] === OPS.endPath) continue;
      for (const path of args[1] as (Float32Array | null)[])
        if (path) segments.push(...straightPieces(path, matrix));
    }
  }
  return segments;
}

/** pdfjs packs a path as numbers: 0 x y moves, 1 x y draws a line, 2 six numbers a cubic, 3 four a quadratic, 4 closes. */
function straightPieces(path: Float32Array | Record<number, number>, matrix: Matrix): Segment[] {
  const numbers = Object.values(path) as number[];
  const pieces: Segment[] = [];
  let at: [number, number] = [0, 0];
  let start = at;
  const lineTo = (to: [number, number]) => {
    const length = Math.hypot(to[0] - at[0], to[1] - at[1]);
    if (length > 0) pieces.push({ from: at, to, length });
    at = to;
  };
  for (let index = 0; index < numbers.length; ) {
    const kind = numbers[index];
    const point = (offset: number) => apply(matrix, numbers[index + offset]!, numbers[index + offset + 1]!);
    if (kind === 0) {
      at = point(1);
      start = at;
      index += 3;
    } else if (kind === 1) {
      lineTo(point(1));
      index += 3;
    } else if (kind === 2) {
      at = point(5);
      index += 7;
    } else if (kind === 3) {
      at = point(3);
      index += 5;
    } else if (kind === 4) {
      lineTo(start);
      index += 1;
    } else throw new Error(`A path holds an unknown piece: ${kind}`);
  }
  return pieces;
}
