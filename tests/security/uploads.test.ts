import { zipSync } from 'fflate';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { storePhoto } from '@/lib/files/photos';
import { readFile } from '@/lib/files/store';

const tile = { create: { width: 48, height: 32, channels: 3, background: '#7c7464' } } as const;
const jpeg = () => sharp(tile).jpeg().toBuffer();
const secret = 'carried-along';

async function kept(bytes: Uint8Array): Promise<string> {
  const result = await storePhoto(bytes);
  if (!result.ok) return result.reason;
  const stored = Buffer.from(await readFile(result.fileKey));
  expect((await sharp(stored).metadata()).format).toBe('jpeg');
  return stored.includes(Buffer.from(secret)) || stored.includes(Buffer.from('PK\x03\x04'))
    ? 'carries it'
    : 'clean';
}

describe('a file that is two things at once', () => {
  test('a photo with an archive behind it is kept without the archive', async () => {
    const archive = zipSync({ [`${secret}.html`]: Buffer.from('<script>alert(1)</script>') });
    expect(await kept(Buffer.concat([await jpeg(), archive]))).toBe('clean');
  });

  test('a photo with a page in its comment is kept without the page', async () => {
    const photo = await jpeg();
    const words = Buffer.from(`<script>/*${secret}*/</script>`);
    // A comment segment, marker FFFE, right after the start of the picture (ITU-T T.81, B.2.4.5).
    const head = Buffer.from([0xff, 0xfe, 0, words.length + 2]);
    expect(await kept(Buffer.concat([photo.subarray(0, 2), head, words, photo.subarray(2)]))).toBe('clean');
  });

  test.each([
    ['a GIF that is also script', Buffer.from(`GIF89a/*${secret}*/=1;alert(1)`)],
    ['a paper with a photo behind it', Buffer.from(`%PDF-1.7\n%${secret}\n`)],
    ['an archive named like a photo', Buffer.from(zipSync({ 'lid.jpg': Buffer.from(secret) }))],
    ['a program', Buffer.from(`MZ${'\0'.repeat(64)}${secret}`, 'latin1')],
    ['a photo’s first bytes and nothing else', Buffer.from([0xff, 0xd8, 0xff, 0xe0])],
  ])('%s is refused', async (_, head) => {
    const outcome = await kept(Buffer.concat([head, head[0] === 0x25 ? await jpeg() : Buffer.alloc(0)]));
    expect(['not-an-image', 'broken']).toContain(outcome);
  });
});

test('a picture that moves is kept as its first frame', async () => {
  const frames = Buffer.concat([Buffer.alloc(16 * 16 * 3, 200), Buffer.alloc(16 * 16 * 3, 20)]);
  const moving = await sharp(frames, { raw: { width: 16, height: 32, channels: 3, pageHeight: 16 } })
    .webp({ loop: 0, delay: [100, 100] })
    .toBuffer();
  expect((await sharp(moving, { animated: true }).metadata()).pages).toBe(2);
  const result = await storePhoto(moving);
  expect(result).toMatchObject({ ok: true, width: 16, height: 16 });
});

test('a picture that says it is enormous is refused before it is decoded', async () => {
  const png = await sharp(tile).png().toBuffer();
  // Width and height stand at bytes 16 and 20 (ISO/IEC 15948, 11.2.2); the check of the chunk no longer fits.
  png.writeUInt32BE(2_000_000_000, 16);
  png.writeUInt32BE(2_000_000_000, 20);
  const began = performance.now();
  const result = await storePhoto(png);
  expect(result.ok).toBe(false);
  expect(performance.now() - began).toBeLessThan(5000);
});
