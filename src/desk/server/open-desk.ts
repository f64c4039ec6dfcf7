import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Failure } from '../api.ts';
import { answer, answerJson, secure } from './answer.ts';
import { EventStream } from './event-stream.ts';
import { letIn, newSession, sessionCookie } from './gate.ts';
import { PageMaker } from './make-page.ts';
import { pageFile } from './page-files.ts';
import { type Press, printLesson } from './print-lesson.ts';
import { printedFile } from './printed-file.ts';
import { readBody } from './read-body.ts';
import { Refusal } from './refusal.ts';
import { pageRequest, printRequest, saveRequest } from './requests.ts';
import { SchoolFiles } from './school-files.ts';
import { watchSchool } from './watch-school.ts';
import { wordsFor } from './words.ts';

export interface DeskOptions extends Omit<Press, 'signal'> {
  /** 0: any free port. */
  readonly port: number;
  /** Is told of mistakes in the program itself; they end a request and never the desk. */
  readonly log: (text: string) => void;
}

export interface Desk {
  /** To open in a browser; it contains the token of the session. */
  readonly address: string;
  readonly port: number;
  readonly token: string;
  /** Ends what is being printed, and every connection. */
  close(): Promise<void>;
}

type Handle = (request: IncomingMessage, response: ServerResponse, url: URL) => Promise<void>;

/**
 * Opens the desk of a school on this machine alone. Throws a `Refusal` where there is no such folder, and what `listen`
 * throws where the port is taken.
 */
export async function openDesk(options: DeskOptions): Promise<Desk> {
  const { folder, out, version, today, log } = options;
  const session = newSession();
  const files = await SchoolFiles.open(folder);
  const pages = new PageMaker(files, version, today);
  const events = new EventStream();
  const stop = new AbortController();
  /** One after the other, because each starts a browser. */
  let printing: Promise<unknown> = Promise.resolve();

  const handlers: Readonly<Record<string, Handle>> = {
    'GET /files': async (_, response) => answerJson(response, 200, await files.list()),
    'GET /file': async (_, response, url) => answerJson(response, 200, await files.read(pathIn(url))),
    'PUT /file': async (request, response) =>
      answerJson(response, 200, await files.save(await readBody(request, saveRequest))),
    'POST /page': async (request, response) => {
      const asked = await readBody(request, pageRequest);
      // What came in the meantime is seen first: a page that has been typed over is not made.
      await new Promise((resolve) => setImmediate(resolve));
      if (!response.destroyed) answerJson(response, 200, await pages.make(asked));
    },
    'GET /words': async (_, response) => {
      const lessons = (await files.list()).files.filter(({ kind }) => kind === 'lesson').map(({ id }) => id);
      answerJson(response, 200, wordsFor(await pages.school(), lessons));
    },
    'POST /print': async (request, response) => {
      const asked = await readBody(request, printRequest);
      const print = () => printLesson(asked, { ...options, signal: stop.signal });
      const printed = printing.then(print, print);
      printing = printed.catch(() => undefined);
      answerJson(response, 200, await printed);
    },
    'GET /printed': async (_, response, url) => {
      const path = pathIn(url);
      const pdf = await printedFile(out, path);
      const name = encodeURIComponent(path.split('/').at(-1)!);
      response.setHeader('Content-Disposition', `inline; filename*=UTF-8''${name}`);
      answer(response, 200, 'application/pdf', pdf);
    },
    'GET /events': async (_, response) => events.add(response),
  };

  const handle: Handle = async (request, response, url) => {
    const found = `${request.method} ${url.pathname}`;
    const handler = Object.hasOwn(handlers, found) ? handlers[found] : undefined;
    if (handler) return handler(request, response, url);
    if (url.pathname === '/') response.setHeader('Set-Cookie', sessionCookie(session, port));
    const file = request.method === 'GET' ? await pageFile(url.pathname) : undefined;
    if (!file) throw new Refusal(404, 'The desk has nothing at this address.');
    answer(response, 200, file.type, file.content);
  };

  const server = createServer((request, response) => {
    secure(response);
    Promise.resolve()
      .then(() => {
        const url = urlOf(request);
        letIn(request, url, session, port);
        return handle(request, response, url);
      })
      .catch((error: unknown) => refuse(request, response, error, log));
  });
  server.on('clientError', (_, socket) => socket.destroy());
  server.requestTimeout = 30_000;
  const port = await listen(server, options.port);
  const watching = await watchSchool(files, (event) => events.tell(event));
  return {
    address: `http://127.0.0.1:${port}/?token=${session.token}`,
    port,
    token: session.token,
    close: async () => {
      watching.close();
      stop.abort();
      events.close();
      const closed = new Promise((resolve) => server.close(resolve));
      await printing;
      server.closeAllConnections();
      await closed;
    },
  };
}

async function listen(server: ReturnType<typeof createServer>, port: number): Promise<number> {
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    // The address, not a name: no other network of this machine, and nobody outside it.
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve();
    });
  });
  return (server.address() as AddressInfo).port;
}

function urlOf(request: IncomingMessage): URL {
  try {
    return new URL(request.url ?? '/', 'http://127.0.0.1');
  } catch {
    throw new Refusal(400, 'The address cannot be read.');
  }
}

function pathIn(url: URL): string {
  return url.searchParams.get('path') ?? '';
}

/** Milliseconds, so that a client that is still sending can read why it was refused. */
const toRead = 2000;

/**
 * What a refused request still sends is thrown away for a while, then cut off. If it were cut at once the connection
 * would be reset, and the answer would be lost before the client reads it.
 */
function cutLater(request: IncomingMessage): void {
  request.resume();
  const timer = setTimeout(() => request.complete || request.socket.destroy(), toRead);
  timer.unref();
}

function refuse(
  request: IncomingMessage,
  response: ServerResponse,
  error: unknown,
  log: (text: string) => void,
): void {
  if (!request.complete) cutLater(request);
  if (error instanceof Refusal) {
    answerJson(response, error.status, { error: error.message, ...error.more } satisfies Failure);
    return;
  }
  if (response.destroyed) return;
  log(`${request.method} ${request.url?.split('?')[0]}: ${(error as Error)?.stack ?? String(error)}\n`);
  answerJson(response, 500, {
    error: 'The desk made a mistake; what it is stands in its terminal.',
  } satisfies Failure);
}
