import type { OutgoingHttpHeaders, ServerResponse } from 'node:http';
import { brotliDecompressSync, gunzipSync, inflateSync } from 'node:zlib';

/**
 * Puts a plain word into what failed before it began, with the name of the request, as the error page has it.
 * A page: Next sends it without any text, with status 500, and lets the browser draw `app/error.tsx`. A customer whose browser
 * runs no script would see nothing at all; what is put in is for those alone (`noscript`).
 * A document or a photo: Next sends nothing, not even what kind of nothing, and the browser shows a fault of its own.
 */
export function tellFailure(response: ServerResponse, requestId: string): void {
  const writeHead = response.writeHead.bind(response);
  const write = response.write.bind(response);
  const end = response.end.bind(response);
  let held: Buffer[] | undefined;

  const hold = (chunk: unknown, encoding: unknown) => {
    if (chunk instanceof Uint8Array) held?.push(Buffer.from(chunk));
    if (typeof chunk === 'string')
      held?.push(Buffer.from(chunk, typeof encoding === 'string' ? (encoding as BufferEncoding) : 'utf8'));
  };
  const isFailedPage = () =>
    response.statusCode >= 500 &&
    response.req.method !== 'HEAD' &&
    /^(text\/html|$)/.test(String(response.getHeader('content-type') ?? ''));

  // The compression of Next calls this before the first piece: headers must wait until the page is whole.
  response.writeHead = (status: number, ...rest: unknown[]) => {
    const given = rest.at(-1);
    if (response.headersSent || status < 500 || Array.isArray(given))
      return Reflect.apply(writeHead, response, [status, ...rest]);
    response.statusCode = status;
    for (const [name, value] of Object.entries(isHeaders(given) ? given : {}))
      if (value !== undefined) response.setHeader(name, value);
    if (isFailedPage()) held ??= [];
    return held ? response : writeHead(status);
  };
  response.write = (chunk: unknown, ...rest: unknown[]) => {
    if (!held && !response.headersSent && isFailedPage()) held = [];
    if (!held) return Reflect.apply(write, response, [chunk, ...rest]);
    hold(chunk, rest[0]);
    for (const done of rest) if (typeof done === 'function') process.nextTick(done);
    return true;
  };
  response.end = (...args: unknown[]) => {
    if (!held && !response.headersSent && isFailedPage()) held = [];
    if (!held) return Reflect.apply(end, response, args);
    hold(args[0], args[1]);
    const isPage = response.hasHeader('content-type');
    const sent = readable(Buffer.concat(held), response);
    const body = isPage ? withWord(sent, requestId) : sent || failedFile(requestId);
    if (!isPage && sent === '') response.setHeader('content-type', 'text/html; charset=utf-8');
    held = undefined;
    response.writeHead = writeHead;
    response.removeHeader('content-encoding');
    response.removeHeader('transfer-encoding');
    response.setHeader('content-length', Buffer.byteLength(body));
    return Reflect.apply(end, response, [body, ...args.filter((done) => typeof done === 'function')]);
  };
}

function isHeaders(value: unknown): value is OutgoingHttpHeaders {
  return typeof value === 'object' && value !== null;
}

function readable(body: Buffer, response: ServerResponse): string {
  if (body.length === 0) return '';
  switch (response.getHeader('content-encoding')) {
    case 'gzip':
      return gunzipSync(body).toString('utf8');
    case 'br':
      return brotliDecompressSync(body).toString('utf8');
    case 'deflate':
      return inflateSync(body).toString('utf8');
    default:
      return body.toString('utf8');
  }
}

function withWord(html: string, requestId: string): string {
  const word = `<noscript><main><h1>This page could not be made</h1>
<p>The fault is on our side. Wait a minute, then try again. What you had already sent is kept.</p>
<p>If you were sending a form, look first whether it arrived: you would have a message from us. If not, go back and send it once more.</p>
<p>When you write to us about it, give this reference: ${requestId}</p>
<p><a href="/">Go to the front page</a></p></main></noscript>`;
  const at = /<body[^>]*>/.exec(html);
  if (!at)
    return `<!doctype html><html lang="en-GB"><title>This page could not be made</title><body>${word}${html}`;
  const from = at.index + at[0].length;
  return html.slice(0, from) + word + html.slice(from);
}

function failedFile(requestId: string): string {
  return `<!doctype html><html lang="en-GB"><title>This could not be fetched</title><body><main><h1>This could not be fetched</h1>
<p>The fault is on our side. Wait a minute, then try again.</p>
<p>When you write to us about it, give this reference: ${requestId}</p>
<p><a href="/">Go to the front page</a></p></main>`;
}
