import type { Prisma } from '@/lib/db/generated/client';

/** The events that say what the owner decided about a unit that nobody claimed (rules/decision.ts). */
export const DECISION_EVENTS = {
  where: { OR: [{ toStage: 'ready' }, { fromStage: 'ready' }, { kind: 'unclaimed-decided' }] },
  orderBy: { version: 'asc' },
  select: { kind: true, at: true, fromStage: true, toStage: true, data: true },
} satisfies Prisma.Job$eventsArgs;

/** The same, and those that say whether a unit that came back waits for its customer's address. */
export const ADDRESS_EVENTS = {
  ...DECISION_EVENTS,
  where: {
    OR: [...DECISION_EVENTS.where.OR, { kind: { in: ['came-back', 'message-sent', 'contact-corrected'] } }],
  },
} satisfies Prisma.Job$eventsArgs;
