import type { IncomingMessage } from 'node:http';
import type { z } from 'zod';
import { Refusal } from './refusal.ts';

/** Bytes: a lesson may have far fewer. */
const longest = 2 * 2 ** 20;

/**
 * The body of a request, read as JSON and checked against a schema. Throws a `Refusal`: 415 for another type (a form
 * on another site cannot send JSON), 413 for more than 2 MiB, 400 for what cannot be read.
 */
export async function readBody<T>(request: IncomingMessage, schema: z.ZodType<T>): Promise<T> {
  const type = request.headers['content-type'] ?? '';
  if (!/^application\/json\s*(;\s*charset=utf-8\s*)?$/i.test(type))
    throw new Refusal(415, 'Send JSON, with `content-type: application/json`.');
  if (Number(request.headers['content-length'] ?? 0) > longest) throw tooLong();
  const bytes = await bytesOf(request);
  const checked = schema.safeParse(parsed(bytes));
  if (checked.success) return checked.data;
  const [issue] = checked.error.issues;
  throw new Refusal(
    400,
    `The request cannot be read: ${issue?.path.join('.') || 'body'}: ${issue?.message}.`,
  );
}

/** Not with `for await`, which cuts the connection when it is left: the client could never read why. */
function bytesOf(request: IncomingMessage): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    let length = 0;
    request.on('data', (part: Buffer) => {
      length += part.length;
      if (length <= longest) parts.push(part);
      else reject(tooLong());
    });
    request.on('end', () => resolve(Buffer.concat(parts)));
    request.on('error', () => reject(new Refusal(400, 'The request was cut off.')));
  });
}

function parsed(bytes: Buffer): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    throw new Refusal(400, 'The request is not JSON in UTF-8.');
  }
}

function tooLong(): Refusal {
  return new Refusal(413, `The request is longer than ${longest / 2 ** 20} MiB.`);
}
