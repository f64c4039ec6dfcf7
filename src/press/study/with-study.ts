import { createHash } from 'node:crypto';
import type { Element } from 'hast';
import { h } from 'hastscript';
import { visit } from 'unist-util-visit';
import type { Page } from '../formats/page-document.ts';
import { dataId } from './mark-live.ts';
import { studyBundle } from './study-bundle.ts';
import { componentOf } from './study-components.ts';
import { questionsId, type StudyData, type StudyUse } from './study-data.ts';

/**
 * A packet with the study page in it: what its figures are computed from as JSON, and the script. Without scripts it
 * is the packet as it was. Its content security policy lets that one script run and no other, and lets nothing be
 * fetched.
 *
 * `packet` is what `packetDocument` gives for a body that `renderStudyLesson` made.
 */
export function withStudy({ title, css, body }: Page, data: StudyData, script = studyBundle()): Page {
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
  const added = [
    h('script', { type: 'application/json', id: dataId }, jsonInHtml(inPage(data, body))),
    h('script', script),
  ];
  return {
    title,
    css,
    head: [h('meta', { httpEquiv: 'Content-Security-Policy', content: policy })],
    body: { ...body, children: [...body.children, ...added] },
  };
}

/** Uses that this edition does not print leave no trace in it. */
function inPage(data: StudyData, body: Element): StudyData {
  const there = new Set<unknown>();
  visit(body, 'element', ({ properties: { id, dataLive } }) => void there.add(id).add(dataLive));
  const isThere = (use: StudyUse) =>
    there.has(componentOf(use).onScreen === 'answered' ? questionsId(use) : String(use.n));
  return { ...data, uses: data.uses.filter(isThere) };
}

/** No text in the data can end the element that it is in. */
function jsonInHtml(data: unknown): string {
  return JSON.stringify(data).replaceAll('<', '\\u003c');
}
