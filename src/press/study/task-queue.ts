export interface TaskQueue {
  readonly add: (task: () => void) => void;
  /** Drops what has not begun. */
  readonly clear: () => void;
}

/** Does one task after another, each in a turn of its own, so that the page can respond in between. */
export function taskQueue(): TaskQueue {
  let waiting: (() => void)[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  const next = () => {
    timer = undefined;
    try {
      waiting.shift()?.();
    } finally {
      if (waiting.length > 0) timer ??= setTimeout(next);
    }
  };
  return {
    add: (task) => {
      waiting.push(task);
      timer ??= setTimeout(next);
    },
    clear: () => {
      waiting = [];
      clearTimeout(timer);
      timer = undefined;
    },
  };
}
