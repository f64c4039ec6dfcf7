import type {
  ConflictAnswer,
  Failure,
  FileAnswer,
  FilesAnswer,
  PageAnswer,
  PageRequest,
  PrintAnswer,
  PrintRequest,
  SavedAnswer,
  SaveRequest,
  WordsAnswer,
} from '../api.ts';

/** The server refused; the message is its own, for the author. */
export class Refused extends Error {
  readonly status: number;

  constructor(status: number, message: string) {
    super(message);
    this.status = status;
  }
}

/** There was no answer: the server is closed, or is starting again. */
export class NoAnswer extends Error {
  constructor() {
    super('The desk does not answer.');
  }
}

async function ask(path: string, options: RequestInit = {}): Promise<Response> {
  try {
    return await fetch(path, options);
  } catch (error) {
    if ((error as Error).name === 'AbortError') throw error;
    throw new NoAnswer();
  }
}

async function good(response: Response): Promise<Response> {
  if (response.ok) return response;
  const failure = (await response.json().catch(() => undefined)) as Failure | undefined;
  throw new Refused(response.status, failure?.error ?? `The desk answered ${response.status}.`);
}

/** An answer that breaks off in the middle is no answer. */
async function json<T>(response: Response): Promise<T> {
  try {
    return (await response.json()) as T;
  } catch (error) {
    if ((error as Error).name === 'AbortError') throw error;
    throw new NoAnswer();
  }
}

async function get<T>(path: string): Promise<T> {
  return json(await good(await ask(path)));
}

function sent(method: string, value: unknown, signal?: AbortSignal): RequestInit {
  const headers = { 'content-type': 'application/json' };
  return { method, headers, body: JSON.stringify(value), signal: signal ?? null };
}

/*
 * The requests of the contract. Each throws `Refused` where the server refuses, `NoAnswer` where there is none.
 */

export const askFiles = () => get<FilesAnswer>('/files');

export const askFile = (path: string) => get<FileAnswer>(`/file?path=${encodeURIComponent(path)}`);

export const askWords = () => get<WordsAnswer>('/words');

export async function askPage(request: PageRequest, signal: AbortSignal): Promise<PageAnswer> {
  return json(await good(await ask('/page', sent('POST', request, signal))));
}

export async function askPrint(request: PrintRequest): Promise<PrintAnswer> {
  return json(await good(await ask('/print', sent('POST', request))));
}

export const printedAddress = (pdf: string) => `/printed?path=${encodeURIComponent(pdf)}`;

export async function askPrinted(pdf: string): Promise<Uint8Array> {
  return new Uint8Array(await (await good(await ask(printedAddress(pdf)))).arrayBuffer());
}

/** What another program made of the file is an answer, not an error. */
export async function askSave(request: SaveRequest): Promise<SavedAnswer | ConflictAnswer> {
  const response = await ask('/file', sent('PUT', request));
  return response.status === 409 ? json(response) : json(await good(response));
}
