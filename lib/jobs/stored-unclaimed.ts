import type { Prisma } from '@/lib/db/generated/client';
import { ADDRESS_EVENTS } from './stored-decision';

/** What must be known of a job to say whether a notice is due (rules/unclaimed-unit.ts). */
export const UNCLAIMED_FACTS = {
  stage: true,
  events: {
    ...ADDRESS_EVENTS,
    where: { OR: [...ADDRESS_EVENTS.where.OR, { kind: 'payment-recorded' }] },
  },
  mails: {
    where: { template: { in: ['unit-ready', 'parcel-came-back', 'dispatch-undone', 'unclaimed-notice'] } },
    orderBy: [{ queuedAt: 'desc' }, { id: 'desc' }],
    select: { template: true, state: true, sentAt: true, bouncedAt: true },
  },
  unclaimedNotices: { orderBy: { notice: 'asc' }, select: { at: true } },
} satisfies Prisma.JobSelect;
