import { db } from '@/lib/db/client';

/** Every text of the database that a person wrote, or could have; the words a customer agrees to are the program’s. */
export async function writtenTexts(): Promise<string[]> {
  const rows: object[][] = [
    await db.job.findMany({ select: { problem: true } }),
    await db.finding.findMany({ select: { text: true } }),
    await db.workEntry.findMany({ select: { text: true } }),
    await db.message.findMany({ select: { text: true } }),
    await db.claim.findMany({ select: { details: true, reasonText: true, lesson: true, contestText: true } }),
    await db.inspectionEntry.findMany({ select: { note: true } }),
    await db.photo.findMany({ select: { caption: true } }),
    await db.quoteRevision.findMany({ select: { reason: true, onYes: true, onNo: true } }),
    await db.quoteRevision.findMany({ select: { proposal: true, note: true } }),
    await db.quoteRequest.findMany({ select: { device: true, problem: true } }),
    await db.quoteLine.findMany({ select: { description: true } }),
    await db.checkEntry.findMany({ select: { note: true } }),
    await db.accessory.findMany({ select: { name: true } }),
    await db.closingDay.findMany({ select: { name: true } }),
    await db.part.findMany({ select: { name: true } }),
    await db.workshop.findMany({ select: { tagline: true, termsText: true, privacyText: true } }),
    await db.workshop.findMany({ select: { paymentText: true, territory: true } }),
  ];
  return rows.flat().flatMap((row) => Object.values(row).filter((text) => typeof text === 'string'));
}

/**
 * Words with a capital that do not begin a sentence, a line or an entry of a list: names, in short. Words with a digit
 * are codes and serials and are left out.
 */
export function properWords(text: string): string[] {
  const words = text.matchAll(/(?<before>^|.{0,2})(?<![\p{L}\d’-])(?<word>\p{Lu}[\p{L}\d’-]*)/gmu);
  return [...words].flatMap(({ groups }) => {
    const before = groups?.['before'] ?? '';
    const word = groups?.['word'] ?? '';
    const isFirst = before === '' || /^(?:[.?!:] |# |- )$/.test(before);
    return isFirst || /\d/.test(word) ? [] : [word];
  });
}
