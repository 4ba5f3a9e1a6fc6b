import { createHash } from 'node:crypto';
import { readFile } from '@/lib/files/store';

/** The bytes of a certificate as issued. Throws when the stored file is no longer the one that was issued. */
export async function readIssued(certificate: { fileKey: string; sha256: string }): Promise<Uint8Array> {
  const bytes = await readFile(certificate.fileKey);
  const found = createHash('sha256').update(bytes).digest('hex');
  if (found !== certificate.sha256)
    throw new Error(`the file ${certificate.fileKey} is not the one that was issued`);
  return bytes;
}
