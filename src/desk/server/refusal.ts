/** A request that is not carried out: the HTTP status, what the author reads, and what else is in the answer. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly status: number;
  readonly more: object;

  constructor(status: number, message: string, more: object = {}) {
    super(message);
    this.status = status;
    this.more = more;
  }
}
