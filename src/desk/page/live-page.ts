import type { PageAnswer, PageRequest } from '../api.ts';
import { askPage } from './ask.ts';

export interface LivePageHooks {
  /** What is to be shown now; undefined where there is nothing. */
  readonly request: () => PageRequest | undefined;
  /** `changedAt`: when the first change that it shows was made, on the clock of `performance.now`. */
  readonly answered: (answer: PageAnswer, request: PageRequest, changedAt: number) => void;
  readonly failed: (error: Error) => void;
}

/** Asks for the page after each change: one request at a time, and only the newest of those that came in the meantime. */
export class LivePage {
  readonly #hooks: LivePageHooks;
  #changedAt: number | undefined;
  #underWay: AbortController | undefined;
  #timer: number | undefined;

  constructor(hooks: LivePageHooks) {
    this.#hooks = hooks;
  }

  /** The text changed: asks at once, but only after the letter itself is shown. */
  typed(): void {
    this.#changedAt ??= performance.now();
    if (this.#underWay) return;
    window.clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => void this.#ask(), 0);
  }

  /** Another file or another choice: what is being made is no longer wanted. */
  turned(): void {
    this.#underWay?.abort();
    this.#underWay = undefined;
    this.#changedAt = performance.now();
    window.clearTimeout(this.#timer);
    void this.#ask();
  }

  async #ask(): Promise<void> {
    const changedAt = this.#changedAt;
    this.#changedAt = undefined;
    const request = this.#hooks.request();
    if (!request || changedAt === undefined) return;
    const own = new AbortController();
    this.#underWay = own;
    try {
      const answer = await askPage(request, own.signal);
      if (this.#underWay === own) this.#hooks.answered(answer, request, changedAt);
    } catch (error) {
      if (this.#underWay === own) this.#hooks.failed(error as Error);
    } finally {
      if (this.#underWay === own) {
        this.#underWay = undefined;
        if (this.#changedAt !== undefined) void this.#ask();
      }
    }
  }
}
