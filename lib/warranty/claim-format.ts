import { workingDaysWords } from '@/lib/calendar/working';
import { formatMoney } from '@/lib/money/amount';
import type { WorkshopCard } from '@/lib/workshop/card';
import type { ClaimFormat } from './rules/reason-sentences';

/** What a claim costs and how long an answer takes, as finished text from the workshop's settings. */
export function claimFormat(
  workshop: Pick<WorkshopCard, 'locale' | 'country' | 'currency' | 'inspectionFeeMinor' | 'answerDays'>,
): ClaimFormat {
  return {
    locale: workshop.locale,
    country: workshop.country,
    inspectionFee:
      workshop.inspectionFeeMinor === 0
        ? null
        : formatMoney(workshop.inspectionFeeMinor, workshop.currency, workshop.locale),
    postageToUs: 'paid back against the receipt when the claim is covered',
    postageBack: 'free',
    answerWithin: workingDaysWords(workshop.answerDays),
  };
}
