import type { Day } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import type { BY_TELLING } from '@/lib/jobs/rules/told';
import { agreedOf } from './rules/agreed';
import type { QuoteLine } from './rules/lines';
import { writeRevision } from './write-revision';

export type StoredRevision = { revision: number; state: string; isInspectionFeeTakenOff: boolean };

/**
 * Puts what is owed for a unit that goes back unrepaired in the place of the agreed price and of any that waits for an answer;
 * gives it with tax, in minor units. An accepted revision stands, an older one is replaced.
 */
export async function writeOwed(
  tx: Tx,
  o: {
    quote: { id: string; revisions: readonly StoredRevision[] };
    /** with tax in their amounts */
    lines: readonly QuoteLine[];
    reason: string;
    /** the customer's own words, or why staff wrote it */
    agreedText: string;
    by: Actor['kind'] | typeof BY_TELLING;
    today: Day;
    now: Date;
  },
): Promise<number> {
  const { quote, lines, reason, now } = o;
  await tx.quoteRevision.updateMany({
    where: { quoteId: quote.id, state: { in: ['accepted', 'sent'] } },
    data: { state: 'replaced' },
  });
  return writeRevision(tx, {
    quoteId: quote.id,
    revision: 1 + Math.max(0, ...quote.revisions.map(({ revision }) => revision)),
    state: 'accepted',
    isGross: true,
    reason,
    onYes: '',
    onNo: '',
    now,
    validUntil: o.today,
    lines,
    // As it was agreed to: of a claim that is looked at again, another price may follow.
    conditions: {
      isInspectionFeeTakenOff: agreedOf({ quotes: [quote] })?.isInspectionFeeTakenOff ?? false,
    },
    decided: { at: now, by: o.by, agreedText: o.agreedText },
  });
}
