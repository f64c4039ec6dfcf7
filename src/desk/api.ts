import type { PlanGrade } from '../flight/terms/caution.ts';

/*
 * What the desk's server and its page say to each other: plain data, as JSON. The server answers on 127.0.0.1 alone.
 *
 * | request | asks with | answers with |
 * | --- | --- | --- |
 * | `GET /?token=…` | the token of the session, from the address that the command shows | the page, and the cookie
 * that everything else needs |
 * | `GET /app.js`, `/printed-view.js`, `/app.css` | | the page's programs and style |
 * | `GET /files` | | `FilesAnswer` |
 * | `GET /file?path=…` | | `FileAnswer` |
 * | `PUT /file` | `SaveRequest` | `SavedAnswer`, or 409 with `ConflictAnswer` |
 * | `POST /page` | `PageRequest` | `PageAnswer` |
 * | `GET /words` | | `WordsAnswer` |
 * | `POST /print` | `PrintRequest` | `PrintAnswer` |
 * | `GET /printed?path=…` | a `pdf` of `PrintAnswer` | the PDF |
 * | `GET /events` | | `text/event-stream`: events named `file`, each with a `FileEvent` |
 *
 * A stream of events that broke off and came back has missed what happened in between: read the versions again.
 *
 * Every answer that is not 200 to 299 is a `Failure`. A program that is not a browser sends the token as
 * `x-desk-token`. A path is that of a file below the school's folder, `/` between folders. Text has `\n` at the end
 * of its lines and no byte order mark, whatever the file has: a save gives the file its own form back. Lines and
 * columns count from 1, columns in UTF-16 units, in that text.
 */

/** The header of the token where there is no cookie. */
export const tokenHeader = 'x-desk-token';

export type FileKind = 'lesson' | 'school' | 'aircraft' | 'airfield' | 'faults';

/** A file that may be edited. */
export interface SchoolFile {
  /** `power-off-180.md`, `fleet/osier-15.yaml`. */
  readonly path: string;
  readonly kind: FileKind;
  /** Its name without the ending, which lessons and commands call it by. */
  readonly id: string;
}

export interface FilesAnswer {
  /** The school's folder, as the command was given it. */
  readonly folder: string;
  /** `school.yaml` first, then lessons, fleet, airfields, faults, each by name. */
  readonly files: readonly SchoolFile[];
}

export interface FileAnswer {
  readonly path: string;
  readonly text: string;
  /** SHA-256 of the bytes on the disk, hexadecimal. */
  readonly version: string;
}

export interface SaveRequest {
  readonly path: string;
  readonly text: string;
  /** The version that the text was made from; null where the file is to be a new one. */
  readonly version: string | null;
}

export interface SavedAnswer {
  readonly path: string;
  readonly version: string;
}

/** Another program has changed the file, made it, or removed it. Nothing was written. */
export interface ConflictAnswer extends Failure {
  readonly path: string;
  /** As it is on the disk; null where the file is no longer there. */
  readonly text: string | null;
  readonly version: string | null;
}

/** Why a request was refused, in words for the author. */
export interface Failure {
  readonly error: string;
}

/** Another program has changed a file of the school; the desk's own saves are not reported. */
export interface FileEvent {
  readonly path: string;
  /** Null where it is gone. */
  readonly version: string | null;
}

export type PageEdition = 'student' | 'instructor';
export type PagePaper = 'A4' | 'Letter';

/** What overrides the lesson's front matter and the school's defaults, each as an author types it. */
export interface PageChoices {
  /** Id; left out, the first aircraft that the lesson is printed for. */
  readonly aircraft?: string | undefined;
  /** Id. */
  readonly airfield?: string | undefined;
  readonly runway?: string | undefined;
  /** `210/12kt`, `calm`. */
  readonly wind?: string | undefined;
  readonly power?: 'idle' | 'stopped' | undefined;
  /** Left out, the student's. */
  readonly edition?: PageEdition | undefined;
  /** Left out, the school's. */
  readonly paper?: PagePaper | undefined;
}

export interface PageRequest {
  /** A lesson; for a YAML file the answer has only messages. */
  readonly path: string;
  /** Unsaved; left out, what is on the disk. */
  readonly text?: string | undefined;
  readonly choices?: PageChoices | undefined;
  /** Unsaved texts of YAML files, by their paths. */
  readonly unsaved?: Readonly<Record<string, string>> | undefined;
  /** Keys of the pieces that the page still has from earlier answers: these are sent without `html` or `css`. */
  readonly have?: readonly string[] | undefined;
}

/** A message on a file, or on what was chosen. */
export interface DeskMessage {
  /** The file that it belongs to; undefined where it belongs to `choice`. */
  readonly path?: string | undefined;
  /** The key of `PageChoices` that is not possible. */
  readonly choice?: string | undefined;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly reason: string;
  /** A `note` is something that the lesson intends, or that is worth knowing. */
  readonly severity: 'error' | 'warning' | 'note';
  readonly ruleId: string;
}

/** One element of the page with everything in it, and the blank text after it. */
export interface Block {
  /** From its content: the same key means the same HTML. A page may have one key twice. */
  readonly key: string;
  /** Left out where the request named the key. */
  readonly html?: string | undefined;
}

/** An element that is opened up, so that its parts can be replaced one by one. */
export interface Room {
  /** Its first tag, and blank text after it: `<div class="lesson">`. */
  readonly open: string;
  readonly parts: readonly Part[];
  /** Its last tag, and blank text after it: `</div>`. */
  readonly close: string;
}

export type Part = Block | Room;

export interface Style {
  readonly key: string;
  /** Left out where the request named the key. */
  readonly css?: string | undefined;
}

/**
 * A packet's page as it is printed, in pieces: `start`, the styles, `middle`, `body` and `end`, put together in this
 * order, are exactly the file that `build` writes.
 */
export interface DeskPage {
  readonly title: string;
  /** From `<!doctype html>` to `<style>`. */
  readonly start: string;
  /** In order: the fonts, which are large and never change; the page boxes; the sheet. */
  readonly styles: readonly Style[];
  /** From `</style>` to before `<body …>`. */
  readonly middle: string;
  /** `<body …>` and everything in it. */
  readonly body: Part;
  readonly end: string;
}

/** What a page is worked out for, after all choices. */
export interface PageSetting {
  readonly aircraft: string;
  readonly airfield: string;
  readonly runway: string;
  readonly edition: PageEdition;
  readonly paper: PagePaper;
  /** In one line: aircraft, place, wind. */
  readonly subject: string;
  /** Of the plan. */
  readonly grade: PlanGrade;
}

export interface PageAnswer {
  /** About the lesson, and about the school's files that stand in its way. */
  readonly messages: readonly DeskMessage[];
  /**
   * Undefined where a message is an error: what was shown before stays. But a plan that reaches the spot and is not
   * to be flown has its page, under the band that says so, and with a message that no packet is printed of it.
   */
  readonly page?: DeskPage | undefined;
  readonly setting?: PageSetting | undefined;
  /** How long the server took, ms. */
  readonly took: number;
}

/** A value that may be typed. */
export interface Value {
  readonly value: string;
  /** What it gives. */
  readonly meaning?: string | undefined;
}

/** A key of the front matter or of a YAML file, or an attribute of a directive. */
export interface Word {
  readonly name: string;
  readonly summary: string;
  readonly needed: boolean;
  /** What may be typed, in words: ``a height with its unit, 100 ft to 10000 ft``. */
  readonly takes?: string | undefined;
  /** The values to choose from, where there are only some. */
  readonly values?: readonly Value[] | undefined;
  readonly sample?: string | undefined;
  /** What holds where it is left out. */
  readonly usual?: string | undefined;
  /** The keys of a section, or of each item of a list. */
  readonly words?: readonly Word[] | undefined;
  readonly isList?: boolean | undefined;
}

export interface DirectiveWord {
  readonly name: string;
  readonly form: 'text' | 'leaf' | 'container';
  /** `:`, `::` or `:::`. */
  readonly colons: string;
  readonly group: string;
  readonly summary: string;
  readonly attributes: readonly Word[];
  /** What may be in its brackets; undefined where it takes none, or takes lesson text (`holdsText`). */
  readonly label?: readonly Value[] | undefined;
  readonly holdsText: boolean;
  readonly example: string;
  /** Its lines, with places to fill in, as editors' snippets have them: `${1:text}`, `${2|one,other|}`, `$0`. */
  readonly snippet: string;
}

interface NamedId {
  readonly id: string;
  readonly name: string;
}

/** All that an editor may complete. */
export interface WordsAnswer {
  readonly directives: readonly DirectiveWord[];
  /** For the front matter, and for each kind of YAML file. */
  readonly keys: Readonly<Record<FileKind, readonly Word[]>>;
  readonly flies: readonly { readonly written: string; readonly takes: string; readonly does: string }[];
  /** Those of this school, as saved; a file with an error is not among them. */
  readonly aircraft: readonly (NamedId & {
    readonly class: string;
    readonly powers: readonly ('idle' | 'stopped')[];
  })[];
  readonly airfields: readonly (NamedId & { readonly runways: readonly string[] })[];
  readonly faults: readonly (NamedId & { readonly rows: readonly NamedId[] })[];
  readonly lessons: readonly string[];
  /** Key positions. */
  readonly positions: readonly NamedId[];
  readonly papers: readonly PagePaper[];
  /** The school's own. */
  readonly paper?: PagePaper | undefined;
}

export interface PrintRequest {
  /** A saved lesson. */
  readonly path: string;
  readonly choices?:
    | (Omit<PageChoices, 'edition'> & { readonly edition?: PageEdition | 'both' | undefined })
    | undefined;
}

export interface PrintedPacket {
  /** Below the folder for packets, without an ending. */
  readonly path: string;
  /**
   * `unchanged`: it is still as it was printed before. `without-browser`: none was found, and what needs none is
   * written. `unprintable`, `unwritten`:
   * `said` says why. `left`: not begun, or a message of the lesson says why.
   */
  readonly state: 'printed' | 'unchanged' | 'without-browser' | 'unprintable' | 'unwritten' | 'left';
  /** For `GET /printed?path=…`; undefined where there is no PDF made from these inputs. */
  readonly pdf?: string | undefined;
  /** Where it is on this machine in each format that is written, as a person would type it. */
  readonly files: readonly string[];
  readonly said: readonly string[];
}

export interface PrintAnswer {
  readonly packets: readonly PrintedPacket[];
  readonly messages: readonly DeskMessage[];
  /** Why there is no browser to print with, and what to do. */
  readonly noBrowser?: string | undefined;
}
