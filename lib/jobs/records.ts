import { RECALLS } from '@/lib/bench/stored-stock';
import { type Day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { inOrder } from '@/lib/db/in-order';
import type { Tx } from '@/lib/db/transaction';
import { hasAgreedPaidOffer } from '@/lib/quotes/rules/agreed';
import { toldRuling } from '@/lib/warranty/stored-ruling';
import { isPromiseOver } from './rules/promise-to-come';
import { type JobKind, STAGES, type Stage } from './rules/stages';
import { withoutUndone } from './rules/undone';
import { AWAITED_PARTS } from './stored-awaited-parts';

/** Reads a stored stage back; throws where a row does not fit the table of stages. */
export function readStage(text: string): Stage {
  const stage = STAGES.find((known) => known === text);
  if (!stage) throw new Error(`a job has the unknown stage ${text}`);
  return stage;
}

export function readKind(text: string): JobKind {
  if (text === 'repair' || text === 'claim') return text;
  throw new Error(`a job has the unknown kind ${text}`);
}

/** What tells whether a promised day stands. */
export const PROMISED = {
  kind: true,
  stage: true,
  promisedOn: true,
  withdrawnAt: true,
  claim: { select: { cause: true, ruling: true, secondLookAt: true } },
  quotes: { select: { revisions: { select: { state: true, revision: true, grossMinor: true } } } },
} satisfies Prisma.JobSelect;

/** The day a job is promised for; null too where no repair is to come that it was promised for. */
export function standingPromise(job: Prisma.JobGetPayload<{ select: typeof PROMISED }>): Day | null {
  const isOver = isPromiseOver({
    kind: readKind(job.kind),
    stage: readStage(job.stage),
    ruling: toldRuling(job.claim),
    hasAgreedPaidOffer: hasAgreedPaidOffer(job),
  });
  return job.promisedOn && !isOver ? dayFromDate(job.promisedOn) : null;
}

const STATUS = {
  ...PROMISED,
  number: true,
  bookedAt: true,
  model: { select: { maker: true, name: true } },
  events: {
    where: { toStage: { not: null } },
    select: { kind: true, toStage: true, at: true },
    orderBy: { version: 'asc' },
  },
} satisfies Prisma.JobSelect;

export type JobStatus = {
  number: string;
  kind: JobKind;
  stage: Stage;
  /** null too where no repair is to come that it was promised for */
  promisedOn: Day | null;
  /** The stages seen so far with the instant each was entered last. */
  reached: { stage: Stage; at: Date }[];
  /** opened for a parcel that belongs to a booking, and goes on under that */
  isOfBooking: boolean;
};

/** What anyone with the number alone may see: where the job stands, and nothing of whose or what it is. */
export async function readStatus(number: string): Promise<JobStatus | null> {
  const job = await db.job.findUnique({ where: { number }, select: STATUS });
  if (!job) return null;
  return {
    number: job.number,
    kind: readKind(job.kind),
    stage: readStage(job.stage),
    promisedOn: standingPromise(job),
    reached: stagesReached(job.events),
    isOfBooking: job.events.some(({ kind }) => kind === 'is-of-booking'),
  };
}

/** The stages that a job has seen, but for those that were recorded by mistake. */
export function stagesReached(
  events: readonly { kind: string; toStage: string | null; at: Date }[],
): { stage: Stage; at: Date }[] {
  const last = new Map<Stage, Date>();
  for (const event of withoutUndone(events)) if (event.toStage) last.set(readStage(event.toStage), event.at);
  return [...last].map(([stage, at]) => ({ stage, at }));
}

/** Of what was recorded, what was not taken back since. */
export const COUNTS = { takenBackAt: null } as const;

/** What a repair usually takes. */
export const USUAL_PARTS = {
  select: { partId: true, quantity: true, part: { select: { name: true } } },
} as const;

/** A model, with what its repairs are called and planned to take: an agreed price may name more of them than one. */
export const MODEL = {
  include: {
    repairs: { orderBy: { name: 'asc' }, select: { id: true, name: true, formerNames: true, minutes: true } },
  },
} satisfies Prisma.ModelDefaultArgs;

/** Everything of one job, for the staff's job sheet and, narrowed by its reader, for the customer. */
const DOCKET = {
  id: true,
  number: true,
  kind: true,
  stage: true,
  version: true,
  serialTyped: true,
  serialKey: true,
  problem: true,
  history: true,
  batteryAnswer: true,
  dataAnswer: true,
  bookedAt: true,
  arrivedAt: true,
  readyAt: true,
  sentBackAt: true,
  closedAt: true,
  promisedOn: true,
  withdrawUntil: true,
  startRequestedAt: true,
  termsAcceptedAt: true,
  termsId: true,
  policyVersion: true,
  returnFeeMinor: true,
  withdrawnAt: true,
  arrivedSerial: true,
  serialComparison: true,
  isSerialSettled: true,
  inboundReference: true,
  parcelNamedAt: true,
  parcelRemindedAt: true,
  carrier: true,
  carrierReference: true,
  soughtSince: true,
  parcelGrams: true,
  parcelLengthMm: true,
  parcelWidthMm: true,
  parcelHeightMm: true,
  valueMinor: true,
  customer: true,
  model: MODEL,
  repair: {
    include: {
      policy: { include: { versions: { orderBy: { version: 'desc' }, take: 1 } } },
      usualParts: USUAL_PARTS,
    },
  },
  sheet: { include: { checks: { orderBy: { position: 'asc' } } } },
  besides: {
    orderBy: inOrder,
    include: {
      sheet: {
        include: {
          checks: { orderBy: { position: 'asc' } },
          repair: {
            select: { name: true, formerNames: true, summary: true, minutes: true, usualParts: USUAL_PARTS },
          },
        },
      },
    },
  },
  accessories: { orderBy: { name: 'asc' } },
  events: { orderBy: { version: 'asc' } },
  findings: { where: COUNTS, orderBy: inOrder },
  photos: { orderBy: inOrder },
  work: { where: COUNTS, orderBy: inOrder },
  partUses: {
    orderBy: inOrder,
    include: { lot: { include: { part: true, recalls: RECALLS } } },
  },
  awaitedParts: AWAITED_PARTS,
  partsNotNeeded: { select: { partId: true } },
  checkEntries: { orderBy: inOrder },
  jumperWires: { where: COUNTS, orderBy: inOrder },
  quotes: {
    include: {
      revisions: {
        orderBy: { revision: 'asc' },
        include: {
          lines: { orderBy: { position: 'asc' } },
          repair: { select: { id: true, name: true } },
        },
      },
    },
  },
  payments: { orderBy: inOrder },
  invoices: {
    select: {
      id: true,
      number: true,
      kind: true,
      correctsId: true,
      issuedOn: true,
      dueOn: true,
      currency: true,
      payableMinor: true,
    },
    orderBy: [{ year: 'asc' }, { sequence: 'asc' }],
  },
  messages: { orderBy: inOrder },
  certificates: { include: { lines: true, policyVersion: true }, orderBy: { revision: 'asc' } },
  claim: {
    include: {
      inspection: true,
      certificate: { include: { lines: { orderBy: { position: 'asc' } }, policyVersion: true } },
    },
  },
} satisfies Prisma.JobSelect;

export type JobRecord = Prisma.JobGetPayload<{ select: typeof DOCKET }>;

export async function readJob(
  where: { id: string } | { number: string },
  client: Tx = db,
): Promise<JobRecord | null> {
  return client.job.findUnique({ where, select: DOCKET });
}

/** Names and initials of staff by id, for histories and readings. */
export async function staffNames(client: Tx = db): Promise<Map<string, { name: string; initials: string }>> {
  const rows = await client.user.findMany({ select: { id: true, name: true, initials: true } });
  return new Map(rows.map((row) => [row.id, { name: row.name, initials: row.initials }]));
}
