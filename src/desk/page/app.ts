import { EditorState } from '@codemirror/state';
import { EditorView } from '@codemirror/view';
import type { DeskMessage, PageAnswer, PageRequest, PageSetting, WordsAnswer } from '../api.ts';
import { askWords, NoAnswer, Refused } from './ask.ts';
import { ChoiceRow } from './choices.ts';
import { listenForChanges } from './connection.ts';
import { DeskFiles } from './desk-files.ts';
import { byId } from './element.ts';
import { FileList } from './file-list.ts';
import { LivePage } from './live-page.ts';
import { MessageList } from './message-list.ts';
import { askTitle } from './new-lesson.ts';
import { isUnsaved, keep, keptPaths, type OpenFile, textOf } from './open-files.ts';
import { frameReady, PageView } from './page-view.ts';
import { Printing } from './printing.ts';
import { editorState } from './source-editor.ts';
import { placeIn, showMessages } from './source-messages.ts';

const button = (id: string) => byId(id, HTMLButtonElement);
const part = (id: string) => byId(id, HTMLElement);
const pageSaid = part('page-said');

let words: WordsAnswer | undefined;
let shown: OpenFile | undefined;
/** The lesson whose page is shown: a YAML file in the editor changes that page. */
let lesson: string | undefined;
let pageOf: string | undefined;
let setting: PageSetting | undefined;
let allMessages: readonly DeskMessage[] = [];

/** Spoken for a reader who cannot see it; the same words twice are spoken twice. */
function say(text: string): void {
  const live = part('live');
  live.textContent = live.textContent === text ? `${text}\u00a0` : text;
}

/** A mistake of the program itself goes to the console; everything else is told to the author. */
function fail(error: unknown): void {
  if (error instanceof Refused) {
    say(error.message);
    pageSaid.textContent = error.message;
  } else if (!(error instanceof NoAnswer)) throw error;
}

await frameReady(byId('sheet', HTMLIFrameElement));
const view = new PageView(byId('sheet', HTMLIFrameElement));
const editor = new EditorView({
  parent: part('editor'),
  state: EditorState.create({
    extensions: [
      EditorState.readOnly.of(true),
      EditorView.contentAttributes.of({ 'aria-label': 'No file is open' }),
    ],
  }),
});
const choices = new ChoiceRow(byId('setting', HTMLFormElement), part('setting-said'), () => {
  printing.changed();
  saidOfPage = '';
  live.turned();
});

const files = new DeskFiles({
  state: ({ path, kind }, text) =>
    editorState(path, kind, text, { words: () => words, changed: () => typed() }),
  dispatch: (file, change) => {
    if (file === shown) editor.dispatch(change(editor.state));
    else file.state = file.state.update(change(file.state)).state;
    live.typed();
  },
  changed: () => showFiles(),
  say,
});

const live = new LivePage({
  request: pageRequest,
  answered: showAnswer,
  failed: (error) => {
    if (error instanceof NoAnswer) connection.lost();
    else fail(error);
  },
});

const list = new FileList(part('files'), (path) => void open(path).catch(fail));
const messages = new MessageList(
  part('count'),
  part('messages'),
  (message) => void goTo(message).catch(fail),
);
const printing = new Printing(printRequestOf, say);

const connection = listenForChanges({
  changed: (path) => void takeUp(path).catch(fail),
  back: () =>
    void files
      .lookAtAll()
      .then(refreshWords)
      .then(() => live.turned())
      .catch(fail),
});

function typed(): void {
  if (!shown) return;
  shown.state = editor.state;
  keepSoon(shown);
  showSaved();
  printing.changed();
  live.typed();
}

const toKeep = new Set<OpenFile>();
/** Not with every letter, because it is written to the disk. */
function keepSoon(file: OpenFile): void {
  if (toKeep.size === 0) setTimeout(keepNow, 300);
  toKeep.add(file);
}
function keepNow(): void {
  for (const file of toKeep) keep(files.folder, file);
  toKeep.clear();
}

async function open(path: string): Promise<void> {
  const file = await files.open(path);
  if (shown) shown.state = editor.state;
  shown = file;
  editor.setState(file.state);
  if (file.kind === 'lesson' && path !== lesson) {
    lesson = path;
    printing.forget();
  }
  history.replaceState(null, '', `/?file=${encodeURIComponent(path)}`);
  showMessages(
    editor,
    allMessages.filter((message) => message.path === path),
  );
  showFiles();
  if (document.body.dataset.show === 'files') showPart('text');
  saidOfPage = '';
  live.turned();
}

function pageRequest(): PageRequest | undefined {
  const path = lesson ?? shown?.path;
  if (path === undefined) return undefined;
  const open = files.get(path);
  const unsaved = files.unsaved
    .filter(({ kind }) => kind !== 'lesson')
    .map((file) => [file.path, textOf(file)]);
  return {
    path,
    text: open && isUnsaved(open) ? textOf(open) : undefined,
    choices: choices.chosen,
    unsaved: unsaved.length > 0 ? Object.fromEntries(unsaved) : undefined,
    have: view.have,
  };
}

function showAnswer(answer: PageAnswer, { path }: PageRequest, changedAt: number): void {
  allMessages = answer.messages;
  const isStale = !answer.page && answer.messages.some(({ severity }) => severity === 'error');
  const isRefused = answer.messages.some(
    ({ ruleId, severity }) => ruleId === 'not-to-be-flown' && severity === 'error',
  );
  if (answer.page) {
    view.show(answer.page);
    pageOf = path;
    useFonts();
  } else if (pageOf !== path) view.clear();
  if (answer.setting) {
    setting = answer.setting;
    choices.setSetting(setting);
  }
  choices.showMessages(answer.messages.filter(({ choice }) => choice !== undefined));
  if (shown)
    showMessages(
      editor,
      answer.messages.filter((message) => message.path === shown!.path),
    );
  messages.show(answer.messages, shown?.path);
  const said = !isStale
    ? answer.page && isRefused
      ? 'This plan is not to be flown: the page says so, and no packet is printed of it.'
      : ''
    : pageOf === path
      ? 'The page is as it was before the error.'
      : 'There is no page yet: mend the error first.';
  if (pageSaid.textContent !== said) pageSaid.textContent = said;
  document.body.dataset.took = (performance.now() - changedAt).toFixed(1);
  document.body.dataset.server = String(answer.took);
  document.body.dataset.page = answer.page ? 'made' : 'kept';
  document.body.dataset.made = String(Number(document.body.dataset.made ?? 0) + 1);
  sayPage(isStale);
}

let saying: number | undefined;
let saidOfPage = '';
/** When typing pauses, and only where it differs from before. */
function sayPage(isStale: boolean): void {
  window.clearTimeout(saying);
  saying = window.setTimeout(() => {
    const words = `${messages.count}. ${isStale ? 'The page is as it was.' : 'The page is made.'}`;
    if (words !== saidOfPage) say(words);
    saidOfPage = words;
  }, 900);
}

let hasFonts = false;
function useFonts(): void {
  const { fonts } = view;
  if (hasFonts || !fonts) return;
  hasFonts = true;
  document.head.append(Object.assign(document.createElement('style'), { textContent: fonts }));
}

function showFiles(): void {
  if (shown && !files.get(shown.path)) {
    shown = undefined;
    lesson = undefined;
    void openFirst().catch(fail);
  }
  part('school').textContent = files.folder;
  list.show(files.list, shown?.path, new Set(files.unsaved.map(({ path }) => path)));
  showSaved();
}

function showSaved(): void {
  const words = !shown
    ? ''
    : shown.other
      ? 'changed by another program too'
      : shown.base.version === null
        ? 'not on the disk'
        : isUnsaved(shown)
          ? 'not saved'
          : 'saved';
  part('name').textContent = shown?.path ?? 'No file is open';
  if (part('saved').textContent !== words) part('saved').textContent = words;
  button('compare').hidden = !shown?.other;
  button('drop').hidden = !shown || shown.base.version !== null || shown.other !== undefined;
  document.title = `${words === 'saved' || !shown ? '' : '• '}${shown?.path ?? 'Desk'} – ${files.folder}`;
  list.mark(new Set(files.unsaved.map(({ path }) => path)));
}

async function openFirst(wanted: string | null = null): Promise<void> {
  const { list } = files;
  const first = list.find(({ path }) => path === wanted) ?? list.find(({ kind }) => kind === 'lesson');
  if (first) await open(first.path);
}

async function save(): Promise<void> {
  if (!shown) return;
  try {
    if ((await files.save(shown)) && shown.kind !== 'lesson') await refreshWords();
  } catch (error) {
    if (error instanceof NoAnswer) connection.lost();
    part('saved').textContent = `not saved: ${(error as Error).message}`;
    fail(error);
  }
}

async function takeUp(path: string): Promise<void> {
  await files.lookAt(path);
  if (!path.endsWith('.md')) await refreshWords();
  const file = files.get(path);
  if (file?.other && file === shown) await files.decide(file);
  live.turned();
}

async function refreshWords(): Promise<void> {
  words = await askWords();
  choices.setWords(words);
}

async function goTo(message: DeskMessage): Promise<void> {
  if (message.choice !== undefined) {
    document.getElementById(`choice-${message.choice}`)?.focus();
    return;
  }
  if (message.path !== undefined && message.path !== shown?.path) await open(message.path);
  showPart('text');
  const { from } = placeIn(editor.state.doc, message);
  editor.dispatch({ selection: { anchor: from }, effects: EditorView.scrollIntoView(from, { y: 'center' }) });
  editor.focus();
}

function printRequestOf() {
  const path = lesson;
  if (path === undefined) return undefined;
  const isSaved = files.unsaved.length === 0;
  // The packet that is shown, and not those for the other aircraft.
  const aircraft = choices.chosen.aircraft ?? setting?.aircraft;
  return { request: { path, choices: { ...choices.chosen, aircraft } }, isSaved };
}

function showPart(name: string): void {
  document.body.dataset.show = name;
  for (const each of document.querySelectorAll<HTMLElement>('[data-part]'))
    each.setAttribute('aria-pressed', String(each.dataset.part === name));
}

/** From part to part, as F6 does in a browser and on a desktop. */
function nextPart(back: boolean): void {
  const stops = [
    part('files').querySelector<HTMLElement>('[aria-current]') ?? button('new-lesson'),
    editor.contentDOM,
    button(document.getElementById('pages')!.hidden ? 'as-sheet' : 'as-pages'),
    part('choice-aircraft'),
  ].filter((element) => element.checkVisibility());
  const regions = stops.map((stop) => stop.closest('nav, .source, main, header'));
  const at = regions.findIndex((region) => region?.contains(document.activeElement));
  stops.at(at < 0 ? 0 : (at + (back ? -1 : 1)) % stops.length)?.focus();
}

function onKey(event: KeyboardEvent): void {
  const isCommand = (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey;
  if (isCommand && event.key.toLowerCase() === 's') void save();
  else if (event.altKey && event.code === 'KeyG') view.showChange();
  else if (event.altKey && event.code === 'KeyP') void printing.print();
  else if (event.key === 'F6') nextPart(event.shiftKey);
  else return;
  event.preventDefault();
}

button('save').addEventListener('click', () => void save());
button('compare').addEventListener('click', () => shown && void files.decide(shown).catch(fail));
button('drop').addEventListener('click', () => {
  if (shown) files.drop(shown);
});
button('keys').addEventListener('click', () => byId('keys-dialog', HTMLDialogElement).showModal());
button('print').addEventListener('click', () => void printing.print());
button('as-sheet').addEventListener('click', () => printing.showPages(false));
button('as-pages').addEventListener('click', () => printing.showPages(true));
button('new-lesson').addEventListener('click', () => {
  void askTitle(files)
    .then(async (path) => {
      if (path === undefined) return;
      await open(path);
      await refreshWords();
      editor.dispatch({ selection: { anchor: editor.state.doc.length } });
      editor.focus();
    })
    .catch(fail);
});
byId('alone', HTMLInputElement).addEventListener('change', (event) => {
  document.body.toggleAttribute('data-alone', (event.target as HTMLInputElement).checked);
});
for (const each of document.querySelectorAll<HTMLElement>('[data-part]'))
  each.addEventListener('click', () => showPart(each.dataset.part!));
document.addEventListener('keydown', onKey);
view.document.addEventListener('keydown', onKey);
window.addEventListener('pagehide', keepNow);
window.addEventListener('beforeunload', (event) => {
  keepNow();
  if (files.unsaved.length > 0) event.preventDefault();
});

showPart('text');
const asked = new URLSearchParams(location.search).get('file');
// The token has done its work: it is removed from the address.
history.replaceState(null, '', asked === null ? '/' : `/?file=${encodeURIComponent(asked)}`);
await files.readList();
for (const path of keptPaths(files.folder)) await files.open(path).catch(fail);
await openFirst(asked);
await refreshWords();
document.body.dataset.ready = '';
