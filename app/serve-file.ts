import 'server-only';

type FileType =
  | 'application/pdf'
  | 'image/jpeg'
  | 'application/zip'
  | 'application/xml'
  | 'text/csv; charset=utf-8';

/**
 * A private document or picture as a response: never kept by a shared cache, never read as another type, and with a
 * name that is ours (RFC 6266; plain ASCII by construction).
 */
export function serveFile(
  bytes: Uint8Array,
  o: { type: FileType; name: string; download?: boolean },
): Response {
  return new Response(Buffer.from(bytes), {
    headers: {
      'content-type': o.type,
      'content-length': String(bytes.byteLength),
      'content-disposition': `${o.download ? 'attachment' : 'inline'}; filename="${o.name.replace(/[^A-Za-z0-9._-]/g, '-')}"`,
      'cache-control': 'private, no-store',
      'x-content-type-options': 'nosniff',
      'x-robots-tag': 'noindex',
    },
  });
}

/** The answer for anything that is not there or not theirs: the two must not be told apart. */
export function nothingHere(): Response {
  return new Response('Not found', { status: 404, headers: { 'cache-control': 'no-store' } });
}
