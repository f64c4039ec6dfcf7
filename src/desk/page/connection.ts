import type { FileEvent } from '../api.ts';
import { byId } from './element.ts';

export interface ConnectionHooks {
  /** Another program changed the file. */
  readonly changed: (path: string) => void;
  /** The desk answers again; what happened in between is not known. */
  readonly back: () => void;
}

const noAnswer = 'The desk does not answer. What you type is kept here; this page tries again by itself.';
const startedAnew =
  'The desk was started anew: open the address that it shows now. What is not saved is still here, to be copied there.';

/** ms between two tries. */
const again = 1_500;

/** Listens for changes made by other programs; where the desk does not answer, says so and keeps trying. */
export function listenForChanges({ changed, back }: ConnectionHooks): { readonly lost: () => void } {
  const said = byId('lost', HTMLElement);
  let source: EventSource | undefined;
  let timer: number | undefined;
  let isLost = false;

  const lost = () => {
    if (!isLost) said.textContent = noAnswer;
    isLost = true;
    said.hidden = false;
  };
  const tryAgain = (wait: number) => {
    window.clearTimeout(timer);
    timer = window.setTimeout(() => void connect(), wait);
  };
  const connect = async () => {
    source?.close();
    // A desk that was started again has another token, and refuses; a stream does not say why it ends.
    const status = await fetch('/files').then(
      (response) => response.status,
      () => 0,
    );
    if (status !== 200) {
      lost();
      said.textContent = status === 401 ? startedAnew : noAnswer;
      tryAgain(again);
      return;
    }
    source = new EventSource('/events');
    source.onopen = () => {
      if (!isLost) return;
      isLost = false;
      said.hidden = true;
      said.textContent = '';
      back();
    };
    source.addEventListener('file', ({ data }) => changed((JSON.parse(data as string) as FileEvent).path));
    source.onerror = () => {
      source?.close();
      lost();
      tryAgain(again);
    };
  };
  void connect();
  return {
    lost: () => {
      if (isLost) return;
      lost();
      tryAgain(again);
    },
  };
}
