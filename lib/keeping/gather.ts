import { dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { inOrder } from '@/lib/db/in-order';
import { COUNTS } from '@/lib/jobs/records';
import { isCollected } from '@/lib/jobs/rules/handover';
import { showNumber } from '@/lib/numbers/job-number';
import type { Person } from './records';

const PHOTOS = {
  orderBy: inOrder,
  select: { purpose: true, caption: true, at: true, fileKey: true },
} as const;
const MESSAGES = {
  orderBy: inOrder,
  select: { author: true, text: true, at: true, readAt: true, settledAt: true, settledNote: true },
} as const;
const MAILS = {
  orderBy: { queuedAt: 'asc' },
  select: {
    template: true,
    toAddress: true,
    state: true,
    queuedAt: true,
    sentAt: true,
    toldAt: true,
    toldNote: true,
    data: true,
  },
} as const;
const REVISIONS = {
  orderBy: { revision: 'asc' },
  omit: { id: true, quoteId: true, policyVersionId: true, repairId: true },
  include: {
    repair: { select: { name: true } },
    policyVersion: { select: { workTerm: true, partsTerm: true } },
    lines: { orderBy: { position: 'asc' }, omit: { id: true, revisionId: true } },
  },
} as const;

const JOB = {
  number: true,
  kind: true,
  stage: true,
  serialTyped: true,
  problem: true,
  history: true,
  batteryAnswer: true,
  dataAnswer: true,
  termsAcceptedAt: true,
  terms: { select: { text: true } },
  bookedAt: true,
  arrivedAt: true,
  readyAt: true,
  sentBackAt: true,
  closedAt: true,
  promisedOn: true,
  withdrawUntil: true,
  withdrawnAt: true,
  inboundReference: true,
  carrier: true,
  carrierReference: true,
  model: { select: { maker: true, name: true } },
  repair: { select: { name: true } },
  accessories: { select: { name: true, isTold: true, isArrived: true }, orderBy: { name: 'asc' } },
  events: {
    select: { kind: true, at: true, actorKind: true, fromStage: true, toStage: true, data: true },
    orderBy: { version: 'asc' },
  },
  findings: { where: COUNTS, select: { text: true, at: true }, orderBy: inOrder },
  work: { where: COUNTS, select: { text: true, minutes: true, at: true }, orderBy: inOrder },
  checkEntries: {
    select: {
      isPassed: true,
      reading: true,
      isOverRange: true,
      choice: true,
      note: true,
      at: true,
      check: { select: { label: true, unit: true } },
    },
    orderBy: inOrder,
  },
  quotes: { select: { number: true, currency: true, revisions: REVISIONS } },
  payments: {
    select: {
      amountMinor: true,
      purpose: true,
      currency: true,
      method: true,
      reference: true,
      receivedOn: true,
    },
    orderBy: inOrder,
  },
  messages: MESSAGES,
  photos: PHOTOS,
  mails: MAILS,
  certificates: {
    orderBy: { revision: 'asc' },
    select: {
      number: true,
      revision: true,
      modelName: true,
      serialTyped: true,
      issuedOn: true,
      endsOn: true,
      supersededAt: true,
      fileKey: true,
      lines: {
        select: { kind: true, description: true, term: true, startsOn: true, endsOn: true },
        orderBy: { position: 'asc' },
      },
    },
  },
  claim: {
    select: {
      number: true,
      certificateNumber: true,
      state: true,
      openedOn: true,
      symptom: true,
      details: true,
      preliminary: true,
      ruling: true,
      reasonText: true,
      ruledAt: true,
      contestedAt: true,
      contestText: true,
      postageState: true,
      postageMinor: true,
      postageTo: true,
      postageAskedAt: true,
      reopenedAt: true,
    },
  },
  invoices: { select: { number: true }, orderBy: [{ year: 'asc' }, { sequence: 'asc' }] },
} satisfies Prisma.JobSelect;

const QUOTE = {
  number: true,
  currency: true,
  request: { omit: { quoteId: true, emailKey: true, serialKey: true, modelId: true, repairId: true } },
  revisions: REVISIONS,
  events: { select: { kind: true, at: true, actorKind: true, data: true }, orderBy: { version: 'asc' } },
  messages: MESSAGES,
  photos: PHOTOS,
  mails: MAILS,
} satisfies Prisma.QuoteSelect;

/** A file of the export: where it lies in it, and where it is kept. */
export type KeptFile = { path: string; fileKey: string };

/** Everything known of one person as plain data, the files that belong to it, and the numbers of their invoices. */
export async function gather(person: Person) {
  const [contacts, jobs, quotes] = await Promise.all([
    db.customer.findMany({
      where: { id: { in: person.customerIds } },
      omit: { id: true, erasedAt: true },
      orderBy: { createdAt: 'asc' },
    }),
    db.job.findMany({
      where: { customerId: { in: person.customerIds } },
      select: JOB,
      orderBy: { bookedAt: 'asc' },
    }),
    db.quote.findMany({ where: { id: { in: person.quoteIds } }, select: QUOTE, orderBy: { number: 'asc' } }),
  ]);
  const files: KeptFile[] = [];
  const told = {
    contacts,
    jobs: jobs.map(({ photos, certificates, invoices, ...job }) => ({
      ...job,
      termsAcceptedAt: job.termsAcceptedAt,
      isCollected: isCollected(job.events),
      photos: photosIn(`jobs/${showNumber(job.number)}`, photos, files),
      certificates: certificates.map(({ fileKey, ...certificate }) => {
        const path = `jobs/${showNumber(job.number)}/certificate-${showNumber(certificate.number)}-${certificate.revision}.pdf`;
        files.push({ path, fileKey });
        return { ...certificate, endsOn: dayFromDate(certificate.endsOn), file: path };
      }),
      invoices: invoices.map(({ number }) => ({ number, file: invoicePath(number) })),
    })),
    quotes: quotes.map(({ photos, ...quote }) => ({
      ...quote,
      photos: photosIn(`quotes/${showNumber(quote.number)}`, photos, files),
    })),
  };
  return { told, files, invoices: jobs.flatMap((job) => job.invoices.map(({ number }) => number)) };
}

export function invoicePath(number: string): string {
  return `invoices/${number.replace(/[^A-Za-z0-9._-]/g, '-')}.pdf`;
}

type PhotoRow = { purpose: string; caption: string; at: Date; fileKey: string };

function photosIn(folder: string, photos: readonly PhotoRow[], files: KeptFile[]) {
  return photos.map(({ fileKey, ...photo }, index) => {
    const path = `${folder}/photo-${String(index + 1).padStart(2, '0')}-${photo.purpose}.jpg`;
    files.push({ path, fileKey });
    return { ...photo, file: path };
  });
}
