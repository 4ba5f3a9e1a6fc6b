import { randomBytes } from 'node:crypto';
import sharp from 'sharp';
import { type StoredPhoto, storePhoto } from '@/lib/files/photos';
import { putFile, readFile } from '@/lib/files/store';
import type { NewPhoto } from '@/lib/jobs/write-photos';
import { pick } from './chance';
import { drawScene, type Scene } from './scenes';

/** What a picture shows and the words under it. */
export type Shot = readonly [scene: Scene, caption: string];

/** Different pictures of one scene. Keeping a new one takes a tenth of a second, copying one a thousandth. */
const VARIANTS = 3;
const kept = new Map<string, Promise<StoredPhoto>>();

/** Takes a picture of a scene. Every photo has files of its own, so that erasing one touches no other. */
export async function takePhoto([scene, caption]: Shot, name: string): Promise<NewPhoto> {
  const variant = `${scene}/${pick(`${name}/${scene}`, 1, VARIANTS)}`;
  const first = kept.get(variant);
  if (first) return { ...(await copyPhoto(await first)), caption };
  const photo = keepPicture(scene, variant);
  kept.set(variant, photo);
  return { ...(await photo), caption };
}

/** Forgets what was drawn: another database keeps its files elsewhere. */
export function forgetPictures(): void {
  kept.clear();
}

/** Draws a scene and keeps it as every photo is kept: taken apart, turned, encoded again, in two sizes. */
async function keepPicture(scene: Scene, name: string): Promise<StoredPhoto> {
  // Hardly compressed: the picture is taken apart again at once, and packing it well would cost most of the time.
  const picture = await sharp(Buffer.from(drawScene(scene, name)))
    .png({ compressionLevel: 1 })
    .toBuffer();
  const result = await storePhoto(picture);
  if (!result.ok) throw new Error(`the picture ${scene} could not be kept: ${result.reason}`);
  const { ok: _, ...stored } = result;
  return stored;
}

async function copyPhoto(photo: StoredPhoto): Promise<StoredPhoto> {
  const name = `photos/${randomBytes(16).toString('hex')}`;
  const fileKey = `${name}.jpg`;
  const thumbKey = `${name}-small.jpg`;
  await putFile(fileKey, await readFile(photo.fileKey), 'image/jpeg');
  await putFile(thumbKey, await readFile(photo.thumbKey), 'image/jpeg');
  return { ...photo, fileKey, thumbKey };
}
