import { type Day, dayInZone } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { foldSerial } from '@/lib/numbers/serial';
import { certificatesOfSerial } from '@/lib/warranty/records';
import { readWorkshop } from '@/lib/workshop/records';
import { readKind, readStage } from './records';
import { matchParcels, type ParcelMatch } from './rules/parcel-match';
import { type ParcelSettings, type ParcelWait, parcelWait } from './rules/parcel-wait';
import { type Sought, soughtFrom } from './rules/sought';
import { LEFT_STAGES, NOT_WITH_US } from './rules/stage-sets';
import type { JobKind, Stage } from './rules/stages';
import { AWAITED, awaitedParcel } from './stored-parcel-wait';

export type ArrivalJob = {
  number: string;
  kind: JobKind;
  stage: Stage;
  serial: string;
  unit: string;
  repair: string;
  customer: string;
  bookedOn: Day;
  /** the carrier's reference the customer gave, or '' */
  reference: string;
};

/** A parcel that is awaited, with how long it has been. */
export type ExpectedParcel = ArrivalJob & { wait: ParcelWait };

/** A certificate in force, and the job that issued it. */
export type FoundCertificate = { number: string; jobNumber: string };

export type ArrivalFinding =
  | { state: 'nothing-asked' }
  /** one booking, without doubt */
  | { state: 'found'; job: ArrivalJob }
  /** the job is past its arrival already; certificates where its unit has left since */
  | { state: 'here-already'; jobs: ArrivalJob[]; certificates: FoundCertificate[] }
  /** it left with a carrier before: the post may have brought the parcel back, or the customer sent it for a fault */
  | { state: 'went-back'; jobs: ArrivalJob[]; certificates: FoundCertificate[] }
  /** several fit, or only a serial that may have been misread: a person chooses */
  | { state: 'choose'; by: ParcelMatch['by']; jobs: ArrivalJob[] }
  /** no booking and no open claim, and a certificate in force: the unit may have come back for a fault */
  | { state: 'certificate-only'; certificates: FoundCertificate[] }
  | { state: 'wrong-character'; what: 'check' | 'character' | 'reference' }
  | { state: 'none'; isNumber: boolean };

/** What is shown of a parcel that may come. */
export const EXPECTED = {
  number: true,
  kind: true,
  stage: true,
  serialTyped: true,
  inboundReference: true,
  carrier: true,
  ...AWAITED,
  model: { select: { maker: true, name: true } },
  repair: { select: { name: true } },
  customer: { select: { name: true } },
} satisfies Prisma.JobSelect;

/** Given to a carrier, who may bring the parcel back. */
const WITH_CARRIER = {
  stage: { in: [...LEFT_STAGES] },
  sentBackAt: { not: null },
  carrier: { not: '' },
} satisfies Prisma.JobWhereInput;

function isWithCarrier({ stage, carrier }: Row): boolean {
  return LEFT_STAGES.includes(readStage(stage)) && carrier !== '';
}

type Row = Prisma.JobGetPayload<{ select: typeof EXPECTED }>;

/** More bookings than this at once are not a small workshop's; the newest are searched. */
const MOST_EXPECTED = 1000;

/** Parcels that may come any day, in the order of inOrderOfComing, and those that are past coming. */
export async function expectedParcels(now: Date): Promise<ExpectedParcel[]> {
  const rows = await db.job.findMany({
    where: { stage: 'booked' },
    orderBy: { bookedAt: 'desc' },
    select: EXPECTED,
    take: MOST_EXPECTED,
  });
  return inOrderOfComing(rows.toReversed(), await readWorkshop(), now);
}

/** Those whose posting is known first, then the oldest booking first, as the rows come. */
export function inOrderOfComing(
  rows: readonly Row[],
  workshop: ParcelSettings & { timeZone: string },
  now: Date,
): ExpectedParcel[] {
  const { timeZone } = workshop;
  const today = dayInZone(now, timeZone);
  return rows
    .toSorted((a, b) => Number(b.inboundReference !== '') - Number(a.inboundReference !== ''))
    .map((row) => ({
      ...shown(row, timeZone),
      wait: parcelWait(awaitedParcel(row, timeZone), workshop, today),
    }));
}

/** The same, those apart that count as not coming any more. */
export function byComing(parcels: readonly ExpectedParcel[]) {
  return {
    coming: parcels.filter(({ wait }) => !wait.isOver),
    notCome: parcels.filter(({ wait }) => wait.isOver),
  };
}

/** Finds the booking that a parcel belongs to, from anything that can be read or scanned on it. */
export async function findArrival(typed: string, expected: readonly ArrivalJob[]): Promise<ArrivalFinding> {
  const sought = soughtFrom(typed);
  switch (sought.kind) {
    case 'nothing':
      return { state: 'nothing-asked' };
    case 'number':
      return byNumber(sought);
    case 'text':
      return byText(sought, expected);
  }
}

async function byNumber(sought: Extract<Sought, { kind: 'number' }>): Promise<ArrivalFinding> {
  const row = await db.job.findFirst({
    where: whereNumber(sought),
    orderBy: { bookedAt: 'desc' },
    select: EXPECTED,
  });
  if (row) {
    const job = shown(row, (await readWorkshop()).timeZone);
    if (job.stage === 'booked') return { state: 'found', job };
    const isGone = LEFT_STAGES.includes(job.stage);
    const certificates = isGone ? await certificatesOf(foldSerial(row.serialTyped)) : [];
    return { state: isWithCarrier(row) ? 'went-back' : 'here-already', jobs: [job], certificates };
  }
  if (sought.of !== 'W') return { state: 'none', isNumber: true };
  const certificate = await db.certificate.findFirst({
    where: { number: sought.number },
    orderBy: { revision: 'desc' },
    select: { job: { select: { number: true } } },
  });
  if (!certificate) return { state: 'none', isNumber: true };
  const found = { number: sought.number, jobNumber: certificate.job.number };
  return { state: 'certificate-only', certificates: [found] };
}

async function certificatesOf(serialKey: string): Promise<FoundCertificate[]> {
  const rows = await certificatesOfSerial([serialKey]);
  return rows.map(({ number, job }) => ({ number, jobNumber: job.number }));
}

/** A unit that comes back carries its certificate's number: the open claim on it leads to the job. */
function whereNumber({ of, number }: Extract<Sought, { kind: 'number' }>): Prisma.JobWhereInput {
  switch (of) {
    case 'J':
      return { number };
    case 'Q':
      return { quotes: { some: { number } } };
    case 'C':
      return { claim: { number } };
    case 'W':
      return { claim: { certificateNumber: number, state: { not: 'closed' } } };
  }
}

async function byText(
  sought: Extract<Sought, { kind: 'text' }>,
  expected: readonly ArrivalJob[],
): Promise<ArrivalFinding> {
  const matches = matchParcels(sought.text, expected);
  const jobs = expected.filter((job) => matches.some((match) => match.number === job.number));
  const [first] = matches;
  const [job] = jobs;
  if (first && job) {
    const isSure = jobs.length === 1 && first.by !== 'near-serial';
    return isSure ? { state: 'found', job } : { state: 'choose', by: first.by, jobs };
  }
  if (sought.key !== '') {
    const here = await db.job.findMany({
      where: { serialKey: sought.key, stage: { notIn: [...NOT_WITH_US] } },
      select: EXPECTED,
      orderBy: { number: 'asc' },
      take: 5,
    });
    const { timeZone } = await readWorkshop();
    if (here.length > 0) {
      return { state: 'here-already', jobs: here.map((row) => shown(row, timeZone)), certificates: [] };
    }
    const gone = await db.job.findMany({
      where: { serialKey: sought.key, ...WITH_CARRIER },
      select: EXPECTED,
      orderBy: { sentBackAt: 'desc' },
      take: 1,
    });
    const certificates = await certificatesOf(sought.key);
    if (gone.length > 0) {
      return { state: 'went-back', jobs: gone.map((row) => shown(row, timeZone)), certificates };
    }
    if (certificates.length > 0) return { state: 'certificate-only', certificates };
  }
  return sought.wrong ? { state: 'wrong-character', what: sought.wrong } : { state: 'none', isNumber: false };
}

function shown(row: Row, timeZone: string): ArrivalJob {
  return {
    number: row.number,
    kind: readKind(row.kind),
    stage: readStage(row.stage),
    serial: row.serialTyped,
    unit: unitName(row.model),
    repair: row.repair.name,
    customer: row.customer.name,
    bookedOn: dayInZone(row.bookedAt, timeZone),
    reference: row.inboundReference,
  };
}
