import type { ServerResponse } from 'node:http';

/**
 * Nothing that the desk answers may load from elsewhere, run where it was not asked to, or be shown inside another
 * site's page. Style may be inside the page (a packet's own is), a program never.
 */
const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src data: 'self'",
  "connect-src 'self'",
  "frame-src 'self' blob:",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'self'",
].join('; ');

const securityHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': policy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Origin-Agent-Cluster': '?1',
  'X-Frame-Options': 'SAMEORIGIN',
  'Cache-Control': 'no-store',
};

/** Called before anything is decided: no answer goes without these headers. */
export function secure(response: ServerResponse): void {
  for (const [name, value] of Object.entries(securityHeaders)) response.setHeader(name, value);
}

export function answer(
  response: ServerResponse,
  status: number,
  type: string,
  content: string | Uint8Array,
): void {
  if (response.headersSent || response.destroyed) return;
  response.statusCode = status;
  response.setHeader('Content-Type', type);
  response.setHeader('Content-Length', Buffer.byteLength(content));
  response.end(content);
}

export function answerJson(response: ServerResponse, status: number, value: unknown): void {
  answer(response, status, 'application/json; charset=utf-8', JSON.stringify(value));
}
