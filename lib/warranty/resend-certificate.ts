import type { Prisma } from '@/lib/db/generated/client';
import { transaction } from '@/lib/db/transaction';
import { ensureLink, writeLinkCopies } from '@/lib/jobs/write-link-copies';
import { queueMail } from '@/lib/mail/queue';
import { foldSerial } from '@/lib/numbers/serial';
import { COVER_FACTS, coveredUntilFact } from './stored-cover-ends';

export type LostCertificate = {
  /** of a certificate, a job or a claim, as stored */
  number: string | null;
  /** as typed from the unit */
  serial: string | null;
  email: string;
  now: Date;
};

/** A unit that was repaired more often than this is not sent more papers at once. */
const MOST_COPIES = 3;

/**
 * Sends the link to a lost certificate, or to a job, whether it runs or has ended, to the address on file, when number or serial and address
 * belong together; else does nothing. It answers nothing either way, so that nobody learns which certificates and
 * addresses there are.
 *
 * A certificate may have been reissued for somebody else, who opened a claim on it as its new owner. Whoever asks gets
 * the newest revision that went to their own address, never the link to another person's job.
 */
export async function resendCertificate(o: LostCertificate): Promise<void> {
  await transaction(async (tx) => {
    const found = await tx.certificate.findMany({
      where: { OR: whereOf(o) },
      orderBy: [{ issuedAt: 'desc' }, { revision: 'desc' }],
      select: {
        ...COVER_FACTS,
        revision: true,
        jobId: true,
        job: { select: { customer: { select: { email: true } } } },
      },
      take: 50,
    });
    const theirs = found.filter(({ job }) => folded(job.customer.email) === folded(o.email));
    const newest = theirs.filter((each, i) => theirs.findIndex((one) => one.number === each.number) === i);
    const sent = newest.slice(0, MOST_COPIES);
    for (const certificate of sent) {
      const { number, revision, jobId, job } = certificate;
      await ensureLink(tx, jobId, o.now);
      await queueMail(tx, {
        template: 'certificate-copy',
        data: { certificateNumber: number, revision, ...(await coveredUntilFact(certificate, tx)) },
        to: job.customer.email,
        jobId,
        now: o.now,
      });
    }
    await writeLinkCopies(tx, {
      where: jobsOf(o),
      isTheirs: (email) => folded(email) === folded(o.email),
      except: sent.map(({ jobId }) => jobId),
      most: MOST_COPIES - sent.length,
      now: o.now,
    });
  });
}

function jobsOf({ number, serial }: LostCertificate): Prisma.JobWhereInput[] {
  const key = serial === null ? '' : foldSerial(serial);
  return [
    ...(number?.startsWith('J') ? [{ number }] : []),
    ...(number?.startsWith('C') ? [{ claim: { number } }] : []),
    ...(number?.startsWith('W') ? [{ claim: { certificateNumber: number } }] : []),
    ...(key === '' ? [] : [{ serialKey: key }]),
  ];
}

function whereOf({ number, serial }: LostCertificate): Prisma.CertificateWhereInput[] {
  const key = serial === null ? '' : foldSerial(serial);
  return [
    ...(number?.startsWith('W') ? [{ number }] : []),
    ...(number?.startsWith('J') ? [{ job: { number } }] : []),
    ...(key === '' ? [] : [{ serialKey: key }]),
  ];
}

// Mail domains have no case, and no provider known to us tells mailboxes apart by it (common practice; RFC 5321 2.4 would allow it).
function folded(address: string): string {
  return address.normalize('NFKC').trim().toLowerCase();
}
