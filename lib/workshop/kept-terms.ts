import { db } from '@/lib/db/client';

/** Terms as somebody agreed to them, by their key; null where nobody did, or for what is no key. */
export async function readKeptTerms(id: string): Promise<{ text: string } | null> {
  if (!/^[\w-]{43}$/.test(id)) return null;
  return db.termsText.findUnique({ where: { id }, select: { text: true } });
}
