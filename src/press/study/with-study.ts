import { createHash } from 'node:crypto';
import { dataId } from './mark-live.ts';
import { studyBundle } from './study-bundle.ts';
import { componentOf } from './study-components.ts';
import { questionsId, type StudyData, type StudyUse } from './study-data.ts';

/**
 * A packet's HTML with the study page in it: what its figures are computed from as JSON, and the script. Without scripts
 * it is the packet as it was. Its content security policy lets that one script run and nothing else, and nothing be
 * fetched.
 *
 * `html` is what `packetHtml` gives for a body that `renderStudyLesson` made.
 */
export function withStudy(html: string, data: StudyData, script = studyBundle()): string {
  if (/<!--|<\/?script/i.test(script))
    throw new Error('The script of the study page would end its own element');
  const hash = createHash('sha256').update(script, 'utf8').digest('base64');
  const policy = [
    "default-src 'none'",
    "style-src 'unsafe-inline'",
    'img-src data:',
    'font-src data:',
    `script-src 'sha256-${hash}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join(';');
  const head = html.indexOf('<title>');
  const end = html.lastIndexOf('</body>');
  if (head === -1 || end === -1) throw new Error('The study page needs a whole HTML document to go into');
  return [
    html.slice(0, head),
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    html.slice(head, end),
    `<script type="application/json" id="${dataId}">${jsonInHtml(inPage(data, html))}</script>`,
    `<script>${script}</script>`,
    html.slice(end),
  ].join('');
}

/** Uses that this edition does not print leave no trace in it. */
function inPage(data: StudyData, html: string): StudyData {
  const isThere = (use: StudyUse) =>
    html.includes(
      componentOf(use).onScreen === 'answered' ? `id="${questionsId(use)}"` : `data-live="${use.n}"`,
    );
  return { ...data, uses: data.uses.filter(isThere) };
}

/** No text in the data can end the element that it stands in. */
function jsonInHtml(data: unknown): string {
  return JSON.stringify(data).replaceAll('<', '\\u003c');
}
