import { createServer, request, type ServerResponse } from 'node:http';
import { gunzipSync, gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { tellFailure } from '@/lib/serving/failed-page';

const page = '<!doctype html><html><head></head><body><script src="/a.js"></script></body></html>';
type Answer = { status: number; encoding: string | undefined; length: string | undefined; body: Buffer };

/** What a caller gets who asks a server that answers so. */
async function ask(answer: (response: ServerResponse) => void, method = 'GET'): Promise<Answer> {
  const server = createServer((_, response) => {
    tellFailure(response, '0199b3a2-0000-7000-8000-00000000000a');
    answer(response);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  const got = await new Promise<Answer>((resolve, reject) => {
    const call = request({ host: '127.0.0.1', port, method, agent: false }, async (incoming) => {
      const parts: Buffer[] = [];
      for await (const part of incoming) parts.push(part);
      const { 'content-encoding': encoding, 'content-length': length } = incoming.headers;
      resolve({ status: incoming.statusCode ?? 0, encoding, length, body: Buffer.concat(parts) });
    });
    call.on('error', reject);
    call.end();
  });
  await new Promise((resolve) => server.close(resolve));
  return got;
}

const failing = (response: ServerResponse) => {
  response.statusCode = 500;
  response.setHeader('content-type', 'text/html; charset=utf-8');
};
const word =
  /<body><noscript>[\s\S]*could not be made[\s\S]*0199b3a2-0000-7000-8000-00000000000a[\s\S]*<\/noscript><script/;

test('a page that failed says so to a browser that runs no script, and keeps what draws it with script', async () => {
  const { status, length, body } = await ask((response) => {
    failing(response);
    response.write(page.slice(0, 50));
    response.end(page.slice(50));
  });
  expect(status).toBe(500);
  expect(body.toString()).toMatch(word);
  expect(Number(length)).toBe(body.length);
});

test('one that was compressed on its way, as Next does, headers first, says so too', async () => {
  const { status, encoding, body } = await ask((response) => {
    failing(response);
    response.setHeader('content-encoding', 'gzip');
    response.writeHead(500);
    const whole = gzipSync(page);
    response.write(whole.subarray(0, 20));
    response.end(whole.subarray(20));
  });
  expect(status).toBe(500);
  expect(encoding).toBeUndefined();
  expect(body.toString()).toMatch(word);
});

test('a failed page without anything in it is a page with a title', async () => {
  const { body } = await ask((response) => {
    failing(response);
    response.end();
  });
  expect(body.toString()).toMatch(/<title>This page could not be made<\/title><body><noscript>/);
});

test('pages that hold, and failures that are no pages, go out as they were', async () => {
  const good = await ask((response) => {
    response.writeHead(200, { 'content-type': 'text/html', 'content-encoding': 'gzip' });
    response.write(gzipSync(page));
    response.end();
  });
  expect(gunzipSync(good.body).toString()).toBe(page);
  const data = await ask((response) => {
    response.writeHead(503, 'Busy', { 'content-type': 'text/plain' });
    response.end('not ready');
  });
  expect([data.status, data.body.toString()]).toEqual([503, 'not ready']);
});

// As Next answers where a route of a document, a photo or a file of rows throws.
test('a document that failed says so, with its reference', async () => {
  const { status, body } = await ask((response) => {
    response.statusCode = 500;
    response.end();
  });
  expect(status).toBe(500);
  expect(body.toString()).toMatch(
    /<h1>This could not be fetched<[\s\S]*0199b3a2-0000-7000-8000-00000000000a/,
  );
  expect(body.toString()).not.toContain('noscript');
  const data = await ask((response) => {
    response.statusCode = 503;
    response.end('not ready');
  });
  expect([data.status, data.body.toString()]).toEqual([503, 'not ready']);
});
