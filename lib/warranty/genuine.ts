import { dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import type { CertificateRecord } from './records';
import type { SignedCertificate } from './rules/signature-payload';
import { isSignatureOf, type PublicKeys, publicKeysFrom } from './signature';
import { publicKeys } from './signing-key';

/** What the signature of a stored revision has to cover, read from its row and lines. */
export function signedFacts(record: CertificateRecord): SignedCertificate {
  return {
    keyId: record.keyId,
    number: record.number,
    revision: record.revision,
    serial: record.serialKey,
    issuedOn: dayFromDate(record.issuedOn),
    lines: record.lines.map((line) => ({
      kind: line.kind === 'part' ? 'part' : 'work',
      term: line.term,
      startsOn: dayFromDate(line.startsOn),
      endsOn: dayFromDate(line.endsOn),
    })),
  };
}

/** The workshop's public keys, retired ones included. */
export async function readPublicKeys(client: Tx = db): Promise<PublicKeys> {
  return publicKeysFrom(await publicKeys(client));
}

/** Whether a stored revision still says what was signed when it was issued. */
export async function isGenuine(record: CertificateRecord, client: Tx = db): Promise<boolean> {
  return isSignatureOf(record.signature, signedFacts(record), await readPublicKeys(client));
}
