import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { factsOf } from '@/lib/jobs/facts';
import type { JobRecord } from '@/lib/jobs/records';
import { formatMoney } from '@/lib/money/amount';
import type { WorkshopCard } from '@/lib/workshop/records';
import { agreedOf } from './rules/agreed';
import { type OfferWords, offerWords } from './rules/offer-words';
import { readCostOfNo } from './stored-after-no';

/** The words of a price that waits on a job, from its records: shown before the answer, and kept with it. */
export function readOfferWords(
  job: JobRecord,
  offer: { grossMinor: number },
  { workshop, today }: { workshop: WorkshopCard; today: Day },
): OfferWords {
  const agreed = agreedOf(job);
  return offerWords(
    {
      isFirst: !factsOf(job).isPriceAgreed,
      isOrder: !factsOf(job).isContractMade,
      gross: offer.grossMinor,
      before: agreed?.grossMinor ?? 0,
      cost: readCostOfNo(job, workshop),
      startAfter: readStartAfter(job, { workshop, today }),
    },
    (minor) => formatMoney(minor, workshop.currency, workshop.locale),
  );
}

/** The day after which work begins, as text, while the customer may withdraw and asked for no early start; else null. */
export function readStartAfter(
  job: JobRecord,
  { workshop, today }: { workshop: WorkshopCard; today: Day },
): string | null {
  const { isStartAllowed, withdrawUntil } = factsOf(job, today);
  return isStartAllowed || withdrawUntil === null
    ? null
    : formatDay(withdrawUntil, workshop.locale, 'weekday');
}
