import { createHash, randomBytes } from 'node:crypto';
import { fileTypeFromBuffer } from 'file-type';
import sharp from 'sharp';
import { Refusal } from '@/lib/outcome';
import { MEGABYTE, PHOTO_MEGABYTES, PHOTO_TYPE_WORDS, PHOTO_TYPES } from './rules/limits';
import { deleteFile, putFile } from './store';

export const PHOTO_BYTES = PHOTO_MEGABYTES * MEGABYTE;

// A phone's largest sensor gives 200 megapixels only on request; 50 holds every ordinary photo and refuses a picture
// that is small as a file and huge in memory.
const pixelLimit = 50_000_000;
const largeSide = 2000;
const smallSide = 320;

const accepted: ReadonlySet<string> = new Set(PHOTO_TYPES);
// Pictures we know and cannot read. Phones that keep HEIC send JPEG from the camera button of a web page.
const refused = new Set(['image/heic', 'image/heif', 'image/heic-sequence', 'image/heif-sequence']);

export type PhotoRefusal =
  | 'too-large'
  | 'not-an-image'
  | 'unsupported'
  | 'broken'
  | 'too-many-pixels'
  | 'not-kept';
export type StoredPhoto = {
  fileKey: string;
  thumbKey: string;
  sha256: string;
  width: number;
  height: number;
};
export type PhotoResult = ({ ok: true } & StoredPhoto) | { ok: false; reason: PhotoRefusal };

/** What to tell the person whose photo was not taken. */
export const PHOTO_REFUSALS: Record<PhotoRefusal, string> = {
  'too-large': `This photo is larger than ${PHOTO_MEGABYTES} MB. Take it again at a lower resolution.`,
  'not-an-image': `This file is not a photo. Send a ${PHOTO_TYPE_WORDS} picture.`,
  unsupported:
    'This photo is in the HEIC form, which we cannot read. Take it with the camera button on this page, or save it as JPEG.',
  broken: 'This photo arrived incomplete. Send it again.',
  'too-many-pixels': 'This picture has more than 50 million pixels. Send a smaller one.',
  'not-kept':
    'We could not keep this photo just now. Nothing else was lost; send it again later, or go on without it.',
};

/**
 * Keeps a photo as two new JPEGs, at most 2000 and 320 pixels on the longer side, turned upright.
 *
 * The bytes that were sent are never kept: decoding and encoding again drops the place where a photo was taken (EXIF,
 * GPS), and anything else that rode along in the file. What a file is, is told from its content, never from its name.
 * `folder` is for photos that may be left behind, so that those of one day are found again.
 */
export async function storePhoto(bytes: Uint8Array, folder = 'photos'): Promise<PhotoResult> {
  if (bytes.byteLength > PHOTO_BYTES) return { ok: false, reason: 'too-large' };
  const type = await fileTypeFromBuffer(bytes);
  if (type && refused.has(type.mime)) return { ok: false, reason: 'unsupported' };
  if (!type || !accepted.has(type.mime)) return { ok: false, reason: 'not-an-image' };

  const drawn = await draw(bytes);
  if (!drawn.ok) return drawn;

  const name = `${folder}/${randomBytes(16).toString('hex')}`;
  const fileKey = `${name}.jpg`;
  const thumbKey = `${name}-small.jpg`;
  try {
    await putFile(fileKey, drawn.large, 'image/jpeg');
    await putFile(thumbKey, drawn.small, 'image/jpeg');
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await deleteFile(fileKey).catch(() => {});
    return { ok: false, reason: 'not-kept' };
  }
  const sha256 = createHash('sha256').update(drawn.large).digest('hex');
  return { ok: true, fileKey, thumbKey, sha256, width: drawn.width, height: drawn.height };
}

/** Forgets a photo whose record could not be written. */
export async function deletePhoto(photo: Pick<StoredPhoto, 'fileKey' | 'thumbKey'>): Promise<void> {
  await deleteFile(photo.fileKey);
  await deleteFile(photo.thumbKey);
}

type Drawn = { ok: true; large: Uint8Array; small: Uint8Array; width: number; height: number };

async function draw(bytes: Uint8Array): Promise<Drawn | { ok: false; reason: PhotoRefusal }> {
  try {
    const large = await sharp(bytes, { limitInputPixels: pixelLimit, failOn: 'error' })
      .autoOrient()
      .resize({ width: largeSide, height: largeSide, fit: 'inside', withoutEnlargement: true })
      // Transparency would turn black in a JPEG.
      .flatten({ background: 'white' })
      .jpeg({ quality: 82, mozjpeg: true })
      .toBuffer({ resolveWithObject: true });
    const small = await sharp(large.data)
      .resize({ width: smallSide, height: smallSide, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 76, mozjpeg: true })
      .toBuffer();
    return { ok: true, large: large.data, small, width: large.info.width, height: large.info.height };
  } catch (error) {
    // libvips has no error codes; this is the one sentence it uses for the limit.
    const isTooBig = error instanceof Error && error.message.includes('exceeds pixel limit');
    return { ok: false, reason: isTooBig ? 'too-many-pixels' : 'broken' };
  }
}
