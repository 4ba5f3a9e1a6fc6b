import { db } from '@/lib/db/client';

export type CertificateFile = { number: string; revision: number; fileKey: string; sha256: string };

/** The stored document of one revision of a certificate, or null for an id nobody knows. */
export function certificateFile(id: string): Promise<CertificateFile | null> {
  return db.certificate.findUnique({
    where: { id },
    select: { number: true, revision: true, fileKey: true, sha256: true },
  });
}
