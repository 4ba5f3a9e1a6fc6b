import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import { readStage } from '@/lib/jobs/records';
import type { Stage } from '@/lib/jobs/rules/stages';
import { isNearKey, lookAlikeKey, oneEditKeys } from '@/lib/numbers/near-serial';
import { compareSerials, foldSerial } from '@/lib/numbers/serial';

export type NearJob = {
  number: string;
  serial: string;
  stage: Stage;
  unit: string;
  repair: string;
  customer: string;
  bookedOn: Day;
};
export type NearCertificate = {
  number: string;
  revision: number;
  serial: string;
  unit: string;
  /** the job that issued it */
  jobNumber: string;
  /** as stated on the paper */
  endsOn: Day;
};
export type NearSerials = { jobs: NearJob[]; certificates: NearCertificate[] };

type Place = 'job' | 'certificate';
type Candidate = { id: string; serialKey: string };

const MOST_SHOWN = 10;

/**
 * Jobs and certificates in force whose serial may be the one typed, misread: never the very serial, and nothing that a
 * program may decide by. Those that differ by look-alikes alone come first, then the newest. Cancelled bookings are left
 * out, and nothing is close to a text of fewer than four characters.
 */
export async function nearSerials(typed: string, o: { timeZone: string }): Promise<NearSerials> {
  const key = foldSerial(typed);
  if (!isNearKey(key)) return { jobs: [], certificates: [] };
  const [jobIds, certificateIds] = await Promise.all([nearIds('job', key), nearIds('certificate', key)]);
  const [jobs, certificates] = await Promise.all([
    db.job.findMany({
      where: { id: { in: jobIds }, stage: { not: 'cancelled' } },
      orderBy: { bookedAt: 'desc' },
      select: {
        number: true,
        serialTyped: true,
        stage: true,
        bookedAt: true,
        model: { select: { maker: true, name: true } },
        repair: { select: { name: true } },
        customer: { select: { name: true } },
      },
    }),
    db.certificate.findMany({
      where: { id: { in: certificateIds }, supersededAt: null },
      orderBy: { issuedAt: 'desc' },
      select: {
        number: true,
        revision: true,
        serialTyped: true,
        modelName: true,
        endsOn: true,
        job: { select: { number: true } },
      },
    }),
  ]);
  return {
    jobs: likeliestFirst(typed, jobs).map((job) => ({
      number: job.number,
      serial: job.serialTyped,
      stage: readStage(job.stage),
      unit: unitName(job.model),
      repair: job.repair.name,
      customer: job.customer.name,
      bookedOn: dayInZone(job.bookedAt, o.timeZone),
    })),
    certificates: likeliestFirst(typed, certificates).map((certificate) => ({
      number: certificate.number,
      revision: certificate.revision,
      serial: certificate.serialTyped,
      unit: certificate.modelName,
      jobNumber: certificate.job.number,
      endsOn: dayFromDate(certificate.endsOn),
    })),
  };
}

function likeliestFirst<T extends { serialTyped: string }>(typed: string, rows: readonly T[]): T[] {
  const looks = lookAlikeKey(typed);
  const isLookAlike = (row: T) => lookAlikeKey(row.serialTyped) === looks;
  return rows.toSorted((a, b) => Number(isLookAlike(b)) - Number(isLookAlike(a))).slice(0, MOST_SHOWN);
}

/**
 * Rows whose key is a likely misread of another, judged by compareSerials(). The database only proposes: keys with the same
 * look-alikes, and every key one edit away, looked up one by one in the index there is anyway. Trigrams were tried and took
 * longer for the same rows (docs/measured.md).
 */
export async function nearIds(place: Place, key: string): Promise<string[]> {
  const rows = await db.$queryRaw<Candidate[]>(proposing(place, key));
  return rows.filter((row) => compareSerials(row.serialKey, key) === 'likely-misread').map(({ id }) => id);
}

/** The statement that proposes; the expression in it is that of the look-alike index, to the letter. */
export function proposing(place: Place, key: string): Prisma.Sql {
  const table = Prisma.raw(place === 'job' ? '"job"' : '"certificate"');
  return Prisma.sql`
    SELECT "id", "serialKey" FROM ${table} WHERE "serialKey" = ANY (${oneEditKeys(key)}::text[])
    UNION
    SELECT "id", "serialKey" FROM ${table}
    WHERE translate("serialKey", 'OQDILJZSGB', '0001112568') = ${lookAlikeKey(key)}`;
}
