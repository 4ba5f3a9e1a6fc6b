import 'server-only';
import { deletePhoto, PHOTO_REFUSALS, type StoredPhoto, storePhoto } from '@/lib/files/photos';
import { Refusal } from '@/lib/outcome';

/**
 * Cleans and stores the photos of a form and hands them to its use case. All or none: where one is refused, or the use case
 * refuses or fails, those already stored are removed again. `forget` does so for a use case that ends well without them.
 * Refuses at `field` more photos than `most`, and one that is none, by the name of its file.
 */
export async function withStoredPhotos<T>(
  formData: FormData,
  o: { field: string; most: number },
  work: (photos: StoredPhoto[], forget: () => Promise<void>) => Promise<T>,
): Promise<T> {
  const files = formData
    .getAll(o.field)
    .filter((entry): entry is File => entry instanceof File && entry.size > 0);
  if (files.length > o.most) {
    const sentence = `Choose ${o.most} ${o.most === 1 ? 'photo' : 'photos'} at most.`;
    throw new Refusal('invalid', sentence, o.field);
  }
  const photos: StoredPhoto[] = [];
  const forget = async () => {
    // With the store away the refusal is still told; lib/keeping/write-left-files.ts removes what stays.
    for (const photo of photos) await deletePhoto(photo).catch(() => {});
  };
  try {
    for (const file of files) {
      const result = await storePhoto(new Uint8Array(await file.arrayBuffer()));
      if (!result.ok) throw new Refusal('invalid', `${file.name}: ${PHOTO_REFUSALS[result.reason]}`, o.field);
      const { ok: _, ...photo } = result;
      photos.push(photo);
    }
    return await work(photos, forget);
  } catch (error) {
    await forget();
    throw error;
  }
}
