import type { Tx } from '@/lib/db/transaction';
import type { NewPhoto } from '@/lib/jobs/write-photos';
import { Refusal } from '@/lib/outcome';
import { MOST_PHOTOS_OF_A_QUOTE } from './rules/request-answers';

/**
 * What a customer sends about a quote, inside the caller's transaction: words as a message, and photos. The message's id
 * may be given, so that what is sent twice meets itself. Refuses more photos than a quote may have.
 */
export async function writeFromCustomer(
  tx: Tx,
  o: { quoteId: string; text: string; photos: readonly NewPhoto[]; id?: string; now: Date },
): Promise<{ messageId: string }> {
  const message = await tx.message.create({
    data: {
      ...(o.id === undefined ? {} : { id: o.id }),
      quoteId: o.quoteId,
      author: 'customer',
      text: o.text,
      at: o.now,
    },
    select: { id: true },
  });
  await writeQuotePhotos(tx, o);
  return { messageId: message.id };
}

/** Ties stored photos to a quote; refuses one photo too many. */
export async function writeQuotePhotos(
  tx: Tx,
  o: { quoteId: string; photos: readonly NewPhoto[]; now: Date },
): Promise<void> {
  // A photo that an earlier form brought along already is not written twice.
  const known = await tx.photo.findMany({
    where: { fileKey: { in: o.photos.map(({ fileKey }) => fileKey) } },
    select: { fileKey: true },
  });
  const photos = o.photos.filter(({ fileKey }) => known.every((photo) => photo.fileKey !== fileKey));
  if (photos.length === 0) return;
  const there = await tx.photo.count({ where: { quoteId: o.quoteId } });
  if (there + photos.length > MOST_PHOTOS_OF_A_QUOTE) {
    throw new Refusal(
      'invalid',
      `We have ${there} photos of this unit already, and can keep ${MOST_PHOTOS_OF_A_QUOTE}.`,
      'photos',
    );
  }
  await tx.photo.createMany({
    data: photos.map((photo) => ({
      quoteId: o.quoteId,
      purpose: 'request',
      caption: photo.caption ?? '',
      fileKey: photo.fileKey,
      thumbKey: photo.thumbKey,
      sha256: photo.sha256,
      width: photo.width,
      height: photo.height,
      at: o.now,
    })),
  });
}
