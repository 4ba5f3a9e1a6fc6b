import { readdirSync } from 'node:fs';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { config } from '@/lib/config';
import { deletePhoto, PHOTO_BYTES, type StoredPhoto, storePhoto } from '@/lib/files/photos';
import { hasFile, readFile } from '@/lib/files/store';

const field = { create: { width: 3000, height: 1500, channels: 3, background: '#7c7464' } } as const;

/** What a phone adds to a photo: where and when it was taken, which phone, and which way up. */
const phoneFacts = {
  IFD0: { Make: 'Marram', Model: 'Marram Two' },
  IFD3: {
    GPSLatitudeRef: 'N',
    GPSLatitude: '50/1 42/1 0/1',
    GPSLongitudeRef: 'W',
    GPSLongitude: '2/1 27/1 0/1',
  },
};

async function phonePhoto(): Promise<Buffer> {
  return sharp(field).jpeg().withExif(phoneFacts).withMetadata({ orientation: 6 }).toBuffer();
}

async function stored(bytes: Uint8Array): Promise<StoredPhoto> {
  const result = await storePhoto(bytes);
  if (!result.ok) throw new Error(`the photo was refused: ${result.reason}`);
  return result;
}

async function refusal(bytes: Uint8Array): Promise<string> {
  const before = countFiles();
  const result = await storePhoto(bytes);
  expect(countFiles()).toBe(before);
  return result.ok ? 'stored' : result.reason;
}

function countFiles(): number {
  const folder = config.files.kind === 'folder' ? config.files.folder : '';
  try {
    return readdirSync(path.join(folder, 'photos')).length;
  } catch {
    return 0;
  }
}

describe('a photo from a phone', () => {
  test('loses its place, its camera and its rotation mark, and is upright', async () => {
    const sent = await phonePhoto();
    // The test can fail: the facts are in what was sent.
    expect(sent.includes(Buffer.from('Marram Two'))).toBe(true);
    expect((await sharp(sent).metadata()).orientation).toBe(6);

    const photo = await stored(sent);
    for (const key of [photo.fileKey, photo.thumbKey]) {
      const bytes = Buffer.from(await readFile(key));
      const { exif, xmp, iptc, icc, orientation, format } = await sharp(bytes).metadata();
      expect({ exif, xmp, iptc, icc, orientation, format }).toEqual({
        exif: undefined,
        xmp: undefined,
        iptc: undefined,
        icc: undefined,
        orientation: undefined,
        format: 'jpeg',
      });
      expect(bytes.includes(Buffer.from('Marram'))).toBe(false);
      expect(bytes.includes(Buffer.from('Exif'))).toBe(false);
    }
  });

  test('is kept at 2000 and 320 pixels on the longer side', async () => {
    const photo = await stored(await phonePhoto());
    expect([photo.width, photo.height]).toEqual([1000, 2000]);
    const large = await sharp(await readFile(photo.fileKey)).metadata();
    const small = await sharp(await readFile(photo.thumbKey)).metadata();
    expect([large.width, large.height]).toEqual([1000, 2000]);
    expect([small.width, small.height]).toEqual([160, 320]);
  });

  test('gets a key that says nothing and is never the same twice', async () => {
    const sent = await phonePhoto();
    const first = await stored(sent);
    const second = await stored(sent);
    expect(first.fileKey).toMatch(/^photos\/[0-9a-f]{32}\.jpg$/);
    expect(second.fileKey).not.toBe(first.fileKey);
    expect(second.sha256).toBe(first.sha256);
  });

  test('is gone with its small copy when it is deleted', async () => {
    const photo = await stored(await phonePhoto());
    await deletePhoto(photo);
    expect(await hasFile(photo.fileKey)).toBe(false);
    expect(await hasFile(photo.thumbKey)).toBe(false);
  });
});

describe('other pictures', () => {
  test.each(['png', 'webp', 'avif'] as const)('a small %s becomes a JPEG of its own size', async (form) => {
    const sent = await sharp({ create: { ...field.create, width: 64, height: 48 } })
      .toFormat(form)
      .toBuffer();
    const photo = await stored(sent);
    expect([photo.width, photo.height]).toEqual([64, 48]);
    expect((await sharp(await readFile(photo.fileKey)).metadata()).format).toBe('jpeg');
  });

  test('what is transparent turns white, not black', async () => {
    const glass = {
      create: { width: 40, height: 40, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } },
    } as const;
    const photo = await stored(await sharp(glass).png().toBuffer());
    const { channels } = await sharp(await readFile(photo.fileKey)).stats();
    expect(channels.map((channel) => channel.min)).toEqual([255, 255, 255]);
  });
});

describe('what is refused', () => {
  test('a JPEG that broke off on the way', async () => {
    const sent = await phonePhoto();
    expect(await refusal(sent.subarray(0, Math.floor(sent.length / 2)))).toBe('broken');
  });

  test('an SVG, which could carry script', async () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><script>alert(1)</script></svg>';
    expect(await refusal(Buffer.from(svg))).toBe('not-an-image');
    expect(await refusal(Buffer.from(`<?xml version="1.0"?>${svg}`))).toBe('not-an-image');
  });

  test('a web page and a file of nothing', async () => {
    expect(await refusal(Buffer.from('<!doctype html><title>x</title><script>alert(1)</script>'))).toBe(
      'not-an-image',
    );
    expect(await refusal(new Uint8Array())).toBe('not-an-image');
  });

  test('a PNG that is small as a file and 100 million pixels in memory', async () => {
    const sent = hugePng(10_000, 10_000);
    expect(sent.length).toBeLessThan(200_000);
    expect(await refusal(sent)).toBe('too-many-pixels');
  });

  test('a file over 15 MB, before anything looks at it', async () => {
    expect(await refusal(new Uint8Array(PHOTO_BYTES + 1))).toBe('too-large');
    expect(await refusal(new Uint8Array(PHOTO_BYTES))).toBe('not-an-image');
  });

  test('HEIC, with a reason of its own', async () => {
    expect(await refusal(heicHead())).toBe('unsupported');
  });
});

test('a picture that is also a web page is kept without the page', async () => {
  const script = '<html><script>alert("polyglot")</script></html>';
  const picture = await sharp({ create: { ...field.create, width: 64, height: 64 } })
    .jpeg()
    .withExif({ IFD0: { ImageDescription: script } })
    .toBuffer();
  const sent = Buffer.concat([picture, Buffer.from(script)]);
  expect(sent.toString('latin1').split('polyglot')).toHaveLength(3);
  const photo = await stored(sent);
  expect(Buffer.from(await readFile(photo.fileKey)).includes(Buffer.from('polyglot'))).toBe(false);
});

/** The first box of a HEIC file (ISO 14496-12 file type box, brand heic of ISO 23008-12). */
function heicHead(): Uint8Array {
  return Buffer.concat([
    Buffer.from([0, 0, 0, 24]),
    Buffer.from('ftypheic'),
    Buffer.alloc(4),
    Buffer.from('mif1heic'),
  ]);
}

/** A one-bit black PNG (ISO/IEC 15948), written by hand because encoding it with sharp would need the memory it tests. */
function hugePng(width: number, height: number): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([1, 0, 0, 0, 0], 8);
  const rows = Buffer.alloc((Math.ceil(width / 8) + 1) * height);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(kind: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(kind), data]);
  const size = Buffer.alloc(4);
  size.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([size, body, check]);
}

// ISO/IEC 15948 annex D.
function crc32(bytes: Buffer): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
