import { documentHtml } from './document-html.ts';
import type { Format } from './format.ts';

/** One file with all that it needs, and with whatever more a screen has. */
export const write: Format['write'] = (document) => documentHtml(document.onScreen?.() ?? document);
