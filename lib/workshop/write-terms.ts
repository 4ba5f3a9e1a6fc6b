import type { Tx } from '@/lib/db/transaction';
import type { WorkshopCard } from './card';
import { termsId } from './terms-id';

/**
 * Keeps the terms as they stand for somebody who agrees to them now, and gives their key; null where none are published.
 * Kept when they are agreed to and not when they are saved, so that every way in which they come to stand is covered. The
 * same text is kept once: of two who agree at once the second finds it there.
 */
export async function keepTerms(
  tx: Tx,
  { termsText }: Pick<WorkshopCard, 'termsText'>,
  now: Date,
): Promise<string | null> {
  const id = termsId(termsText);
  if (id === '') return null;
  await tx.termsText.createMany({
    data: [{ id, text: termsText, firstAgreedAt: now }],
    skipDuplicates: true,
  });
  return id;
}
