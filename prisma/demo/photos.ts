import sharp from 'sharp';
import { storePhoto } from '@/lib/files/photos';
import type { NewPhoto } from '@/lib/jobs/write-photos';
import { drawScene, type Scene } from './scenes';

/** What a picture shows and the words under it. */
export type Shot = readonly [scene: Scene, caption: string];

/** Draws a scene and keeps it as every photo is kept: decoded, turned, encoded again, in two sizes. */
export async function takePhoto([scene, caption]: Shot, name: string): Promise<NewPhoto> {
  // Hardly compressed: the picture is taken apart again at once, and packing it well would cost most of the time.
  const drawn = await sharp(Buffer.from(drawScene(scene, name)))
    .png({ compressionLevel: 1 })
    .toBuffer();
  const { ok, ...stored } = await storePhoto(drawn);
  if (!ok || !('fileKey' in stored)) throw new Error(`the picture ${scene} could not be kept`);
  return { ...stored, caption };
}
