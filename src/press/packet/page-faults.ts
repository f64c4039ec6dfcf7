/** What is wrong with a page, as found in the browser before printing. */
export interface PageFault {
  readonly kind: 'wide' | 'tall' | 'overfull' | 'overlapping';
  /** The element, as a person finds it in the HTML: tag, id, classes and the beginning of its text. */
  readonly element: string;
  /** mm beyond the page, or beyond the room that it has. */
  readonly excess: number;
}

/** The room between the margins, CSS pixels. */
export interface PageRoom {
  readonly width: number;
  readonly height: number;
}

/**
 * Runs inside the page (it is sent there as source text: nothing from outside may be used in it). Finds what reaches
 * beyond the right edge, because the browser would silently shrink the whole document to fit it and no drawing would
 * be to scale; drawings and notes higher than a page, which would be cut; and notes and answers that are higher than
 * the room kept for them in both editions, or lie over something that reaches into the margin.
 */
export function findPageFaults(room: PageRoom): PageFault[] {
  const pixelsPerMm = 96 / 25.4;
  const root = document.documentElement;
  root.style.width = `${room.width}px`;
  const left = root.getBoundingClientRect().left;
  // Half a pixel: what rounding to device pixels may add.
  const edge = left + room.width + 0.5;
  const faults: PageFault[] = [];

  const name = (element: Element): string => {
    const id = element.id === '' ? '' : `#${element.id}`;
    const classes = [...element.classList].map((each) => `.${each}`).join('');
    const words = (element.getAttribute('aria-label') ?? element.textContent ?? '')
      .trim()
      .replace(/\s+/g, ' ');
    const text = words.length > 50 ? `${words.slice(0, 50)}…` : words;
    return `<${element.tagName.toLowerCase()}${id}${classes}>${text === '' ? '' : ` "${text}"`}`;
  };
  const clipped = (element: Element): boolean => {
    for (let at = element.parentElement; at !== null && at !== document.body; at = at.parentElement) {
      if (getComputedStyle(at).overflowX !== 'visible') return true;
    }
    return false;
  };
  const report = (element: Element, right: number): void => {
    if (right <= edge || clipped(element)) return;
    // The innermost element says most: one that only contains it is not reported as well.
    faults.push({ kind: 'wide', element: name(element), excess: (right - left - room.width) / pixelsPerMm });
  };

  const walk = (element: Element): boolean => {
    const before = faults.length;
    if (!(element instanceof SVGSVGElement)) for (const child of element.children) walk(child);
    if (faults.length > before) return true;
    let right = element.getBoundingClientRect().right;
    for (const node of element.childNodes) {
      if (node.nodeType !== Node.TEXT_NODE) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects()) right = Math.max(right, box.right);
    }
    report(element, right);
    return faults.length > before;
  };
  walk(document.body);

  for (const drawing of document.querySelectorAll('svg, img, .note')) {
    const { height } = drawing.getBoundingClientRect();
    if (height > room.height + 0.5) {
      faults.push({ kind: 'tall', element: name(drawing), excess: (height - room.height) / pixelsPerMm });
    }
  }
  for (const room of document.querySelectorAll('.note.instructor, .worked-answer')) {
    const excess = room.scrollHeight - room.clientHeight;
    if (excess > 1) faults.push({ kind: 'overfull', element: name(room), excess: excess / pixelsPerMm });
  }
  const inMargin = [...document.querySelectorAll('figure, .table-room, .note')].map((element) => ({
    element,
    box: element.getBoundingClientRect(),
  }));
  for (const note of inMargin) {
    if (!note.element.classList.contains('note')) continue;
    for (const other of inMargin) {
      const across = Math.min(note.box.right, other.box.right) - Math.max(note.box.left, other.box.left);
      const down = Math.min(note.box.bottom, other.box.bottom) - Math.max(note.box.top, other.box.top);
      if (other === note || across < 1 || down < 1) continue;
      faults.push({ kind: 'overlapping', element: name(note.element), excess: down / pixelsPerMm });
    }
  }
  root.style.width = '';
  return faults;
}

/** A sentence that a person can act on. */
export function faultMessage({ kind, element, excess }: PageFault): string {
  const mm = `${Math.ceil(excess * 10) / 10} mm`;
  switch (kind) {
    case 'wide':
      return `${element} reaches ${mm} beyond the right edge of the text: make it narrower, or the page could not be printed to scale.`;
    case 'tall':
      return `${element} is ${mm} higher than a page: make it lower, or it would be cut.`;
    case 'overfull':
      return `${element} is ${mm} higher than the room it has in both editions: shorten it, or put it where the text is wider (not into a list or a box).`;
    case 'overlapping':
      return `${element} lies ${mm} over something else in the margin: put the note a paragraph earlier or later.`;
  }
}
