import { createHash } from 'node:crypto';
import { db } from '@/lib/db/client';
import { deleteFile, putFile, readFile } from '@/lib/files/store';
import { readWorkshop } from '@/lib/workshop/records';
import { drawPaper } from './draw-invoice';
import { readWholeInvoice, type WholeInvoice } from './records';

/**
 * The document of an invoice, always the same bytes: drawn when it is first asked for, kept with its checksum, and served
 * from the store ever after. Two who ask first at once may both draw; the row keeps one file, and both get that one.
 */
export async function invoiceFile(whole: WholeInvoice): Promise<Uint8Array> {
  if (whole.file) return readKept(whole.file);
  const bytes = await drawPaper(whole, await readWorkshop());
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const fileKey = `invoices/${whole.facts.number}-${crypto.randomUUID()}.pdf`;
  await putFile(fileKey, bytes, 'application/pdf');
  const { count } = await db.invoice.updateMany({
    where: { id: whole.facts.id, fileKey: null },
    data: { fileKey, sha256 },
  });
  if (count === 1) return bytes;
  // What cannot be removed just now goes when lib/keeping/write-left-files.ts comes by.
  await deleteFile(fileKey).catch(() => {});
  const kept = await readWholeInvoice(whole.facts.number);
  if (!kept?.file) throw new Error(`invoice ${whole.facts.number} has no document`);
  return readKept(kept.file);
}

async function readKept(file: { fileKey: string; sha256: string }): Promise<Uint8Array> {
  const bytes = await readFile(file.fileKey);
  if (createHash('sha256').update(bytes).digest('hex') !== file.sha256)
    throw new Error(`the file ${file.fileKey} is not the one that was issued`);
  return bytes;
}
