/** A request that cannot be flown as asked: which field, what is wrong, and what is allowed. */
export class RequestError extends Error {
  override readonly name = 'RequestError';
  readonly field: string;

  constructor(field: string, message: string) {
    super(message);
    this.field = field;
  }
}

/** What is made; undefined where a RequestError is thrown over it. */
export function unlessRefused<Made>(make: () => Made): Made | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof RequestError) return undefined;
    throw error;
  }
}
