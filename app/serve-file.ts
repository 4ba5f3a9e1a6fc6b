import 'server-only';
import { readFile } from '@/lib/files/store';

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

export function servePdf(bytes: Uint8Array, name: string): Response {
  return serveFile(bytes, { type: 'application/pdf', name: `${name}.pdf` });
}

/** A stored photo as it is, or small with ?size=thumb. */
export async function servePhoto(
  request: Request,
  photo: { id: string; fileKey: string; thumbKey: string },
): Promise<Response> {
  const isThumb = new URL(request.url).searchParams.get('size') === 'thumb';
  const bytes = await readFile(isThumb ? photo.thumbKey : photo.fileKey);
  return serveFile(bytes, { type: 'image/jpeg', name: `photo-${photo.id}.jpg` });
}

/** What an address under a private link, and one under a number, hands its file. */
export type OfToken = { params: Promise<{ token: string }> };
export type OfNumber = { params: Promise<{ number: string }> };

/** The answer for anything that is not there or not theirs: the two must not be told apart. */
export function nothingHere(): Response {
  return new Response('Not found', { status: 404, headers: { 'cache-control': 'no-store' } });
}
