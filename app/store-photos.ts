import 'server-only';
import { deletePhoto, PHOTO_REFUSALS, type StoredPhoto, storePhoto } from '@/lib/files/photos';

export type StoredPhotos =
  | { ok: true; photos: StoredPhoto[]; forget: () => Promise<void> }
  | { ok: false; sentence: string };

/**
 * Cleans and stores the photos of a form before its use case runs. All or none: when one is refused, those already
 * stored are removed and the sentence names the file. `forget` removes them when the use case refuses later.
 */
export async function storePhotos(
  entries: readonly FormDataEntryValue[],
  most: number,
): Promise<StoredPhotos> {
  const files = entries.filter((entry): entry is File => entry instanceof File && entry.size > 0);
  if (files.length > most)
    return { ok: false, sentence: `Choose ${most} ${most === 1 ? 'photo' : 'photos'} at most.` };
  const photos: StoredPhoto[] = [];
  const forget = async () => {
    // With the store away the refusal is still told; lib/keeping/write-left-files.ts removes what stays.
    for (const photo of photos) await deletePhoto(photo).catch(() => {});
  };
  for (const file of files) {
    const result = await storePhoto(new Uint8Array(await file.arrayBuffer()));
    if (!result.ok) {
      await forget();
      return { ok: false, sentence: `${file.name}: ${PHOTO_REFUSALS[result.reason]}` };
    }
    const { ok: _, ...photo } = result;
    photos.push(photo);
  }
  return { ok: true, photos, forget };
}
