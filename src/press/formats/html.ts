import { documentHtml } from './document-html.ts';
import type { Format } from './format.ts';

/** One file with all that it needs, and with what a screen has more. */
export const write: Format['write'] = (document) => documentHtml(document.onScreen?.() ?? document);
