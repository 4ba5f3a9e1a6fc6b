import { gzipSync } from 'node:zlib';

/** Bytes of all script files that a page loads, compressed as gzip; what only browsers without modules load is left out. */
export async function scriptBytes(origin: string, path: string): Promise<number> {
  const html = await (await fetch(origin + path)).text();
  const tags = [...html.matchAll(/<script\b[^>]*\bsrc="([^"]+)"[^>]*>/g)];
  const loaded = new Set(tags.filter(([tag]) => !/\bnomodule\b/i.test(tag)).map(([, address]) => address));
  let bytes = 0;
  for (const address of loaded) {
    const answer = await fetch(new URL(address ?? '', origin));
    bytes += gzipSync(Buffer.from(await answer.arrayBuffer())).length;
  }
  return bytes;
}
