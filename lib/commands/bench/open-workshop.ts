import { transaction } from '@/lib/db/transaction';
import { ensureFirstOwner } from '@/lib/people/first-owner';
import type { SignedCertificate } from '@/lib/warranty/rules/signature-payload';
import { readPrivateKey, signCertificate } from '@/lib/warranty/signature';
import { currentSigningKey } from '@/lib/warranty/signing-key';
import { loadCatalogue } from '@/prisma/demo/catalogue';
import { hireStaff } from '@/prisma/demo/staff';
import { writeWorkshop } from '@/prisma/demo/workshop';

/** Opens the demonstration's workshop in a migrated, empty database: price list, parts and staff, and not one job. */
export async function openWorkshop(now: Date): Promise<void> {
  await ensureFirstOwner();
  await transaction(async (tx) => {
    await writeWorkshop(tx, now);
    await loadCatalogue(tx, now);
  });
  await hireStaff();
}

/** Signs as the workshop of this database does. */
export async function workshopSigner(now: Date): Promise<(certificate: SignedCertificate) => string> {
  const { id, privateKey } = await currentSigningKey(now);
  const key = readPrivateKey(privateKey);
  return (certificate) => signCertificate({ ...certificate, keyId: id }, key);
}
