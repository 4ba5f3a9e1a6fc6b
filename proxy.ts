import { createHash } from 'node:crypto';
import { type NextRequest, NextResponse } from 'next/server';
import { styleSheet as mailStyles } from '@/emails/ink';
import { config as settings } from '@/lib/config';

/** Gives every page its content security policy: only scripts and styles that carry this answer's own number run. */
export function proxy(request: NextRequest) {
  const nonce = btoa(crypto.randomUUID());
  const policy = contentSecurityPolicy(nonce, !settings.isProduction);
  const headers = new Headers(request.headers);
  headers.set('x-nonce', nonce);
  // Next reads the number from the request and puts it on its own scripts.
  headers.set('content-security-policy', policy);
  // Pages are not told their own address; the way back after signing in needs it.
  headers.set('x-path', request.nextUrl.pathname + request.nextUrl.search);
  const response = NextResponse.next({ request: { headers }, status: statusOf(request.nextUrl.pathname) });
  response.headers.set('content-security-policy', policy);
  if (settings.appUrl.startsWith('https:')) {
    response.headers.set('strict-transport-security', 'max-age=31536000');
  }
  return response;
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

export const config = {
  matcher: [
    {
      source: '/((?!_next/static|_next/image|favicon.ico|robots.txt).*)',
      missing: [
        { type: 'header', key: 'next-router-prefetch' },
        { type: 'header', key: 'purpose', value: 'prefetch' },
      ],
    },
  ],
};
