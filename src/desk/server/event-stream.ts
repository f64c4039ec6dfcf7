import type { ServerResponse } from 'node:http';
import type { FileEvent } from '../api.ts';
import { Refusal } from './refusal.ts';

/** Windows of one desk; more than this are a mistake. */
const most = 16;
/** ms: a connection on which nothing is sent may be cut. */
const beat = 20_000;

/** Tells every open page of the desk what happens (Server-Sent Events). */
export class EventStream {
  readonly #open = new Set<ServerResponse>();
  readonly #clock = setInterval(() => this.#send(':\n\n'), beat).unref();

  add(response: ServerResponse): void {
    if (this.#open.size >= most) throw new Refusal(429, `The desk is open in ${most} windows: close one.`);
    response.writeHead(200, { 'Content-Type': 'text/event-stream; charset=utf-8' });
    response.write('retry: 1000\n\n');
    this.#open.add(response);
    response.on('close', () => this.#open.delete(response));
  }

  tell(event: FileEvent): void {
    this.#send(`event: file\ndata: ${JSON.stringify(event)}\n\n`);
  }

  close(): void {
    clearInterval(this.#clock);
    for (const response of this.#open) response.end();
    this.#open.clear();
  }

  #send(text: string): void {
    for (const response of this.#open) response.write(text);
  }
}
