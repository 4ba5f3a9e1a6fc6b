import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { factsOf } from '@/lib/jobs/facts';
import type { JobRecord } from '@/lib/jobs/records';
import { formatMoney } from '@/lib/money/amount';
import type { WorkshopCard } from '@/lib/workshop/records';
import { agreedOf } from './rules/agreed';
import { isInspectionOnly } from './rules/inspection-fee';
import { type OfferWords, offerWords, type YesAfterNo, yesAfterNoWords } from './rules/offer-words';
import { readWithdrawalRule } from './rules/withdrawal';
import { DAYS_TO_WITHDRAW } from './rules/withdrawal-text';
import { readCostOfNo } from './stored-after-no';

/** The words of a price that waits on a job, from its records: shown before the answer, and kept with it. */
export function readOfferWords(
  job: JobRecord,
  offer: { grossMinor: number; repair: { name: string } | null },
  { workshop, today }: { workshop: WorkshopCard; today: Day },
): OfferWords {
  const agreed = agreedOf(job);
  return offerWords(
    {
      isFirst: !factsOf(job).isPriceAgreed,
      isOrder: !factsOf(job).isContractMade,
      isAfterInspection: isAfterInspection(job),
      repair: offer.repair?.name ?? null,
      gross: offer.grossMinor,
      before: agreed?.grossMinor ?? 0,
      cost: readCostOfNo(job, workshop),
      startAfter: readStartAfter(job, { workshop, today }),
    },
    (minor) => formatMoney(minor, workshop.currency, workshop.locale),
  );
}

/** The words of a yes to a price that was declined on a job, from its records: shown before it, and kept with it. */
export function readYesAfterNoWords(
  job: JobRecord,
  declined: { grossMinor: number; repair: { name: string } | null },
  { workshop, today }: { workshop: WorkshopCard; today: Day },
): YesAfterNo {
  return yesAfterNoWords(
    {
      isOrder: !factsOf(job).isContractMade,
      repair: declined.repair?.name ?? null,
      gross: declined.grossMinor,
      back: agreedOf(job)?.grossMinor ?? 0,
      startAfter: readStartAfter(job, { workshop, today }),
    },
    (minor) => formatMoney(minor, workshop.currency, workshop.locale),
  );
}

/** What the price that waits on a job follows, as facts of a mail: nothing that was agreed, or an inspection at a price of its own. */
export function priceFacts(job: JobRecord): { isFirst?: true; isAfterInspection?: true } {
  if (!factsOf(job).isPriceAgreed) return { isFirst: true };
  return isAfterInspection(job) ? { isAfterInspection: true } : {};
}

function isAfterInspection(job: JobRecord): boolean {
  const agreed = agreedOf(job);
  return agreed !== undefined && factsOf(job).isPriceAgreed && isInspectionOnly(agreed);
}

/**
 * What work waits for after a yes, as text: the last day to withdraw where the period runs, the whole period where this yes
 * begins it. Null where nothing is waited for, or the customer asked for an early start.
 */
export function readStartAfter(
  job: JobRecord,
  { workshop, today }: { workshop: WorkshopCard; today: Day },
): string | null {
  const { isContractMade, isStartAllowed, withdrawUntil } = factsOf(job, today);
  if (!isContractMade) return readWithdrawalRule(workshop.withdrawalRule) === 'off' ? null : DAYS_TO_WITHDRAW;
  return isStartAllowed || withdrawUntil === null
    ? null
    : formatDay(withdrawUntil, workshop.locale, 'weekday');
}
