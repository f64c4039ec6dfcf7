import type { PageDocument } from './page-document.ts';

/**
 * Prints a document; prints each only once. Undefined where there is no browser. Throws `UnprintableError` as a
 * printer does; any other error is the caller's to handle. `draft`: the same pages, without tags and bookmarks.
 */
export type Print = (
  document: PageDocument,
  how?: { readonly draft?: boolean },
) => Promise<Uint8Array | undefined>;

/** What a format may use to write. */
export interface Tools {
  readonly print: Print;
}

/** A way to write a document to a file. */
export interface Format {
  /** The ending of its files' names, without a full stop: `html`. */
  readonly ending: string;
  /** The content of the file; undefined where it needs a browser and there is none. */
  readonly write: (
    document: PageDocument,
    tools: Tools,
  ) => string | Uint8Array | undefined | Promise<string | Uint8Array | undefined>;
}
