import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { isStage, STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { type MailState, mailStates } from './rules/standing';
import { isToWorkshop } from './rules/words';

export type ListedMail = {
  id: string;
  template: string;
  toAddress: string;
  state: MailState;
  attempts: number;
  lastError: string | null;
  queuedAt: Date;
  sentAt: Date | null;
  /** when it came back, and what the other mail server said */
  bouncedAt: Date | null;
  bounceNote: string;
  /** when its reader was told some other way, and how */
  toldAt: Date | null;
  toldNote: string;
  jobNumber: string | null;
  /** of the quote it is about, where there was no job */
  quoteNumber: string | null;
};

export const MAILS_PER_PAGE = 50;

const listed = {
  id: true,
  template: true,
  toAddress: true,
  state: true,
  attempts: true,
  lastError: true,
  queuedAt: true,
  sentAt: true,
  bouncedAt: true,
  bounceNote: true,
  toldAt: true,
  toldNote: true,
  job: { select: { number: true } },
  quote: { select: { number: true } },
} as const;

/** One page of messages, those that need a hand first; pages count from 1, and one past the last holds nothing. */
export async function listMail(o: {
  state: MailState | 'bounced' | null;
  page: number;
}): Promise<ListedMail[]> {
  const rows = await db.mail.findMany({
    ...(o.state && { where: o.state === 'bounced' ? { bouncedAt: { not: null } } : { state: o.state } }),
    select: listed,
    // By the alphabet the states come as failed, kept, queued, sending, sent: what needs a hand is first.
    orderBy: [{ state: 'asc' }, { queuedAt: 'desc' }, { id: 'desc' }],
    skip: (o.page - 1) * MAILS_PER_PAGE,
    take: MAILS_PER_PAGE,
  });
  return rows.map(({ job, quote, state, ...row }) => ({
    ...row,
    state: readState(state),
    jobNumber: job?.number ?? null,
    quoteNumber: quote?.number ?? null,
  }));
}

export type MailCounts = Record<MailState | 'bounced', number>;

/** How many messages stand where; those that came back are counted as sent too. */
export async function countMail(): Promise<MailCounts> {
  const groups = await db.mail.groupBy({ by: ['state'], _count: { _all: true, bouncedAt: true } });
  const counts = { queued: 0, sending: 0, sent: 0, failed: 0, kept: 0, bounced: 0 };
  for (const { state, _count } of groups) {
    counts[readState(state)] = _count._all;
    counts.bounced += _count.bouncedAt;
  }
  return counts;
}

/** The same of what needs a hand, found by indexes: messages that have left are many, and Today asks each time. */
export async function countMailToLookAt(): Promise<Pick<MailCounts, 'failed' | 'kept' | 'bounced'>> {
  const [counts] = await db.$queryRaw<[Pick<MailCounts, 'failed' | 'kept' | 'bounced'>]>`
    SELECT (SELECT COUNT(*) FROM "mail" WHERE "state" = 'failed' AND "toldAt" IS NULL)::int AS failed,
      (SELECT COUNT(*) FROM "mail" WHERE "state" = 'kept' AND "toldAt" IS NULL)::int AS kept,
      (SELECT COUNT(*) FROM "mail" WHERE "bouncedAt" IS NOT NULL AND "toldAt" IS NULL)::int AS bounced`;
  return counts;
}

export type TroubledMail = {
  id: string;
  template: string;
  toAddress: string;
  /** whom it was for: three kinds of message go to the workshop's own address */
  to: 'customer' | 'workshop';
  trouble: string;
  isBounced: boolean;
  at: Date;
  /** the stage that its job was moved to after it was written, as a label; null where it stands as it did */
  movedTo: string | null;
};

/**
 * Messages about a job or a quote that were given up or came back and whose reader was not told some other way, the newest first.
 * What is kept for want of a mail server is left out: there it is every message, which Today says once.
 */
export async function troubledMail(about: { jobId: string } | { quoteId: string }): Promise<TroubledMail[]> {
  const rows = await db.mail.findMany({
    where: { ...about, toldAt: null, OR: [{ state: 'failed' }, { bouncedAt: { not: null } }] },
    select: {
      id: true,
      template: true,
      toAddress: true,
      lastError: true,
      bouncedAt: true,
      bounceNote: true,
      queuedAt: true,
      ...MOVES,
    },
    orderBy: [{ queuedAt: 'desc' }, { id: 'desc' }],
  });
  return rows.map((row) => ({
    id: row.id,
    template: row.template,
    toAddress: row.toAddress,
    to: isToWorkshop(row.template) ? 'workshop' : 'customer',
    trouble: row.bouncedAt ? row.bounceNote : (row.lastError ?? ''),
    isBounced: row.bouncedAt !== null,
    at: row.bouncedAt ?? row.queuedAt,
    movedTo: movedTo(row),
  }));
}

/** Where a message's job was moved to last, and when. */
const MOVES = {
  job: {
    select: {
      events: {
        where: { toStage: { not: null } },
        orderBy: { version: 'desc' },
        take: 1,
        select: { at: true, toStage: true },
      },
    },
  },
} satisfies Prisma.MailSelect;

type Moved = { queuedAt: Date; job: { events: readonly { at: Date; toStage: string | null }[] } | null };

/** The stage that a message's job was moved to after it was written, as it is called; null where it was not. */
function movedTo({ queuedAt, job }: Moved): string | null {
  const last = job?.events[0];
  if (!last?.toStage || last.at <= queuedAt) return null;
  return isStage(last.toStage) ? STAGE_WORDS[last.toStage].label : null;
}

export type StoredMail = ListedMail & { data: unknown; messageId: string; movedTo: string | null } & Subject;
type Subject = { jobId: string | null; quoteId: string | null };

export async function findMail(id: string): Promise<StoredMail | null> {
  const row = await db.mail.findUnique({
    where: { id },
    select: {
      ...listed,
      data: true,
      messageId: true,
      jobId: true,
      quoteId: true,
      job: { select: { ...listed.job.select, ...MOVES.job.select } },
    },
  });
  if (!row) return null;
  const { job, quote, state, ...rest } = row;
  return {
    ...rest,
    movedTo: movedTo(row),
    state: readState(state),
    jobNumber: job?.number ?? null,
    quoteNumber: quote?.number ?? null,
  };
}

function readState(state: string): MailState {
  const known = mailStates.find((candidate) => candidate === state);
  if (!known) throw new Error(`a message is in the unknown state ${state}`);
  return known;
}
