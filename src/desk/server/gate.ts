import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { tokenHeader } from '../api.ts';
import { Refusal } from './refusal.ts';

/** The secrets of one session. */
export interface Session {
  /** In the address that the command shows, and in the header of a program that is not a browser. */
  readonly token: string;
  /** What the browser keeps in its cookie: not the token, which may be in its history. */
  readonly pass: string;
}

export function newSession(): Session {
  const secret = () => randomBytes(32).toString('base64url');
  return { token: secret(), pass: secret() };
}

/** A browser sends a cookie to every server of the machine, whatever its port: the name keeps two desks apart. */
function cookieName(port: number): string {
  return `chalkwing-desk-${port}`;
}

export function sessionCookie({ pass }: Session, port: number): string {
  return `${cookieName(port)}=${pass}; Path=/; HttpOnly; SameSite=Strict`;
}

/**
 * Lets a request in, or throws a `Refusal`: 403 where it comes by a name other than this machine's own (a name
 * rebound to 127.0.0.1) or from another site's page, 401 where it has no token.
 */
export function letIn(request: IncomingMessage, url: URL, session: Session, port: number): void {
  const { host, origin, cookie } = request.headers;
  if (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`)
    throw new Refusal(403, 'The desk answers by the address that its command shows, and by no other name.');
  const isFirstLoad = request.method === 'GET' && url.pathname === '/';
  const isOwn = (origin === undefined || origin === `http://${host}`) && comesFromHere(request, isFirstLoad);
  if (!isOwn) throw new Refusal(403, 'The desk does not answer to the pages of other sites.');
  const given = request.headers[tokenHeader] ?? (isFirstLoad ? url.searchParams.get('token') : null);
  const held = cookieOf(cookie, cookieName(port));
  if (isSame(given, session.token) || isSame(held, session.pass)) return;
  throw new Refusal(401, 'Open the address that `chalkwing desk` shows, with its token: this one has none.');
}

/** What a browser says about where a request comes from (Fetch Metadata); a program that is not a browser says nothing. */
function comesFromHere({ headers }: IncomingMessage, isFirstLoad: boolean): boolean {
  const site = headers['sec-fetch-site'];
  if (site === undefined || site === 'same-origin') return true;
  const isTopNavigation =
    headers['sec-fetch-mode'] === 'navigate' && headers['sec-fetch-dest'] === 'document';
  // Typed, or a bookmark; a link on another page leads to the desk only with its token.
  return isTopNavigation && (site === 'none' || isFirstLoad);
}

function cookieOf(header: string | undefined, name: string): string | undefined {
  const pairs = (header ?? '').split(';').map((pair) => pair.trim());
  return pairs.find((pair) => pair.startsWith(`${name}=`))?.slice(name.length + 1);
}

/** In a time that does not tell how much of it was right. */
function isSame(given: string | string[] | null | undefined, secret: string): boolean {
  if (typeof given !== 'string') return false;
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(given), digest(secret));
}
