import { z } from 'zod';
import type { SoughtUnit } from '@/lib/bench/stored-recalls';
import { type Day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';
import type { CoverLine, HeldInterval, PolicyTerms } from './rules/terms';
import { readTerms } from './stored-terms';

/** The newest version of a policy, of its versions read with the newest first. */
export function newestVersion<Version>({ versions: [newest] }: { versions: readonly Version[] }): Version {
  if (!newest) throw new Error('a policy has no version');
  return newest;
}

const lineKind = z.enum(['work', 'part']);

type StoredLine = {
  key: string;
  kind: string;
  description: string;
  symptoms: string[];
  term: string;
  startsOn: Date;
  renewedUntil: Date | null;
  renewedFrom: Date | null;
  lastClaimDay: Date | null;
};

export function readCoverLine(row: StoredLine): CoverLine {
  return {
    id: row.key,
    kind: lineKind.parse(row.kind),
    description: row.description,
    symptoms: row.symptoms,
    term: row.term,
    startsOn: dayFromDate(row.startsOn),
    renewedUntil: row.renewedUntil ? dayFromDate(row.renewedUntil) : null,
    renewedFrom: row.renewedFrom ? dayFromDate(row.renewedFrom) : null,
    statedClaimDay: row.lastClaimDay ? dayFromDate(row.lastClaimDay) : null,
  };
}

/** What is asked of the model of a certificate's unit. */
export const MODEL_OF_CERTIFICATE = {
  id: true,
  slug: true,
  isListed: true,
  battery: true,
  batteryWh: true,
  serialPlace: true,
} satisfies Prisma.ModelSelect;

const CERTIFICATE = {
  id: true,
  number: true,
  revision: true,
  jobId: true,
  modelName: true,
  serialTyped: true,
  serialKey: true,
  issuedAt: true,
  issuedOn: true,
  endsOn: true,
  supersededAt: true,
  keyId: true,
  signature: true,
  fileKey: true,
  sha256: true,
  policyVersionId: true,
  policyVersion: true,
  lines: { orderBy: { position: 'asc' } },
  job: { select: { model: { select: MODEL_OF_CERTIFICATE } } },
  claims: {
    where: { state: { not: 'closed' } },
    select: { id: true, number: true, openedOn: true, jobId: true, job: { select: { arrivedAt: true } } },
    take: 1,
  },
} satisfies Prisma.CertificateSelect;

export type CertificateRecord = Prisma.CertificateGetPayload<{ select: typeof CERTIFICATE }>;

export type Chain = {
  /** oldest first; the last one is in force */
  revisions: CertificateRecord[];
  inForce: CertificateRecord;
  terms: PolicyTerms;
  held: HeldInterval[];
  openClaim: { id: string; number: string; openedOn: Day; jobId: string; arrivedOn: Date | null } | null;
};

/** Every revision of a certificate with the days held and the open claim, or null for an unknown number. */
export async function readChain(number: string, client: Tx = db): Promise<Chain | null> {
  const revisions = await client.certificate.findMany({
    where: { number },
    orderBy: { revision: 'asc' },
    select: CERTIFICATE,
  });
  const inForce = revisions.at(-1);
  if (!inForce) return null;
  const held = await client.heldInterval.findMany({
    where: { certificateNumber: number },
    orderBy: { fromDay: 'asc' },
  });
  const [open] = revisions.flatMap(({ claims }) => claims);
  return {
    revisions,
    inForce,
    terms: readTerms(inForce.policyVersion),
    held: held.map((row) => ({
      from: dayFromDate(row.fromDay),
      to: dayFromDate(row.toDay),
      claimNumber: row.claimNumber,
      isByMistake: row.isByMistake,
    })),
    openClaim: open
      ? {
          id: open.id,
          number: open.number,
          openedOn: dayFromDate(open.openedOn),
          jobId: open.jobId,
          arrivedOn: open.job.arrivedAt,
        }
      : null,
  };
}

/** The unit of a certificate, by whatever its revisions say of it. */
export function unitOfChain({ inForce, revisions }: Chain): SoughtUnit {
  return {
    modelId: inForce.job.model.id,
    serials: revisions.map(({ serialTyped }) => serialTyped),
    certificateNumbers: [inForce.number],
  };
}

/** The repair, and the model with it, that a certificate was first issued for: a later revision may have left with another job. */
export async function repairOfCertificate(number: string, client: Tx = db) {
  const { job } = await client.certificate.findUniqueOrThrow({
    where: { number_revision: { number, revision: 1 } },
    select: { job: { select: { modelId: true, model: true, repairId: true, repair: true } } },
  });
  return job;
}

/** Certificates whose serial folds to one of these keys, newest first; for arrivals and the job sheet. */
export async function certificatesOfSerial(serialKeys: readonly string[], client: Tx = db) {
  return client.certificate.findMany({
    where: { serialKey: { in: [...serialKeys] }, supersededAt: null },
    orderBy: { issuedAt: 'desc' },
    select: {
      number: true,
      revision: true,
      endsOn: true,
      modelName: true,
      jobId: true,
      job: { select: { number: true } },
    },
    take: 20,
  });
}
