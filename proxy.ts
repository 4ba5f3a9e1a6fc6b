import { createHash } from 'node:crypto';
import { type NextRequest, NextResponse } from 'next/server';
import { styleSheet as mailStyles } from '@/emails/ink';
import { config as settings } from '@/lib/config';
import { askGate, METHODS } from '@/lib/gate/ask-gate';

/**
 * Asks the gate, and gives every page its content security policy: only scripts and styles that carry this answer's own
 * number run.
 */
export async function proxy(request: NextRequest) {
  const gate = await askGate(request.clone(), settings.appUrl);
  if (!gate.opens) return refusal(gate);
  if (isHandedOn(request)) {
    const { pathname, search } = request.nextUrl;
    return NextResponse.redirect(new URL(pathname + search, settings.appUrl), 303);
  }
  // Led there, as nothingHere() does: Next takes a rewrite of an address at 127.0.0.1 for one of another machine, asks itself
  // over HTTP, and answers 500 where a connection that rested is closed just then.
  if (!isReadable(request.nextUrl))
    return NextResponse.redirect(new URL('/nothing-here', settings.appUrl), 303);
  const nonce = btoa(crypto.randomUUID());
  const policy = contentSecurityPolicy(nonce, !settings.isProduction);
  const headers = new Headers(request.headers);
  const origin = request.headers.get('origin');
  // The gate has judged it; Next compares it once more, with a Host header that a proxy in between may have changed.
  if (origin) headers.set('x-forwarded-host', new URL(origin).host);
  else headers.delete('x-forwarded-host');
  headers.set('x-nonce', nonce);
  // Next reads the number from the request and puts it on its own scripts.
  headers.set('content-security-policy', policy);
  // Pages are not told their own address; the way back after signing in needs it.
  headers.set('x-path', request.nextUrl.pathname + request.nextUrl.search);
  const response = NextResponse.next({ request: { headers }, status: statusOf(request.nextUrl.pathname) });
  response.headers.set('content-security-policy', policy);
  return response;
}

function refusal({ status, sentence }: { status: number; sentence: string }): NextResponse {
  const headers = {
    'content-type': 'text/plain; charset=utf-8',
    'cache-control': 'no-store',
    'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
    ...(status === 405 && { allow: METHODS.join(', ') }),
  };
  return new NextResponse(sentence, { status, headers });
}

/**
 * True for a form that another page handed on. A page that leads on while it answers a form sent without script does so
 * with 307, which sends the form along; no page takes the form of another, so the address is asked for plainly instead.
 */
function isHandedOn(request: NextRequest): boolean {
  if (request.method !== 'POST' || request.headers.has('next-action')) return false;
  const from = request.headers.get('referer') ?? '';
  return URL.canParse(from) && new URL(from).pathname !== request.nextUrl.pathname;
}

// PostgreSQL's text knows no NUL, and half a percent code is no text at all: no address of the house has either.
function isReadable({ pathname, search }: { pathname: string; search: string }): boolean {
  try {
    return !search.includes('%00') && !decodeURIComponent(pathname).includes('\0');
  } catch {
    return false;
  }
}

// A page cannot set its own status: this one tells somebody that another role is needed.
function statusOf(path: string): number {
  return path === '/workshop/not-yours' ? 403 : 200;
}

// The mail pages frame messages as they leave; their one style sheet never changes and carries no number.
const mailStylesHash = `sha256-${createHash('sha256').update(mailStyles).digest('base64')}`;

function contentSecurityPolicy(nonce: string, isDevelopment: boolean): string {
  return [
    "default-src 'none'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${isDevelopment ? " 'unsafe-eval'" : ''}`,
    `style-src 'self' ${isDevelopment ? "'unsafe-inline'" : `'nonce-${nonce}' '${mailStylesHash}'`}`,
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${isDevelopment ? ' ws:' : ''}`,
    "manifest-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}

// Everything but what the build has made and put beside the pages; next.config.ts gives those a policy of their own.
export const config = { matcher: ['/((?!_next/static/|_next/image$|favicon\\.ico$|robots\\.txt$).*)'] };
