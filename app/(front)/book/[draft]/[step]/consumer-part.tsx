import { Facts } from '@/app/ui/docket/facts';
import { Checkbox } from '@/app/ui/forms/choices';
import { TextLink } from '@/app/ui/page/text-link';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { formatMoney } from '@/lib/money/amount';
import { readWithdrawalRule, withdrawUntil } from '@/lib/quotes/rules/withdrawal';
import { rightSentences, startRequestWords, traderLine } from '@/lib/quotes/rules/withdrawal-text';
import type { WorkshopCard } from '@/lib/workshop/card';
import { readCalendar } from '@/lib/workshop/records';
import { traderOf } from '@/lib/workshop/rules/trader';

/** The last day to withdraw from a booking made now, as text; null where there is no such right. */
export async function lastDayToWithdraw(workshop: WorkshopCard): Promise<string | null> {
  const today = dayInZone(now(), workshop.timeZone);
  const rule = readWithdrawalRule(workshop.withdrawalRule);
  const until = withdrawUntil(today, rule, await readCalendar(workshop, today));
  return until && formatDay(until, workshop.locale, 'weekday');
}

type ConsumerProps = {
  workshop: WorkshopCard;
  until: string;
  /** of the price that is agreed to, with tax, minor units; 0 where it has none */
  inspectionFee: number;
};

/** What a consumer is told before a contract at a distance binds them (Directive 2011/83/EU Art. 6(1), 8(2)). */
export function ConsumerPart({ workshop, until, inspectionFee }: ConsumerProps) {
  const fee = inspectionFee > 0 ? formatMoney(inspectionFee, workshop.currency, workshop.locale) : null;
  return (
    <section aria-labelledby="right-to-withdraw">
      <h2 id="right-to-withdraw">Your right to withdraw</h2>
      {rightSentences({ until, isStartAsked: null, inspectionFee: fee }).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <Facts items={[{ term: 'You book with', text: traderLine(traderOf(workshop)) }]} />
      <p>
        <TextLink href="/withdrawal">The law’s own words, and the form it gives you</TextLink>. Both come with
        your mail too.
      </p>
    </section>
  );
}

/** The wish for an early start: a box of its own, left empty, since it gives something up (Art. 8(8), 16(a)). */
export function StartRequest({ until }: { until: string }) {
  return (
    <Checkbox
      name="start"
      label={startRequestWords(until)}
      hint="You need not tick this. Without it we start work after that day."
    />
  );
}

/** The terms, which only the customer can agree to. */
export function TermsBox() {
  return (
    <Checkbox
      name="terms"
      label={
        <>
          I agree to the <TextLink href="/terms">terms</TextLink> and have read the{' '}
          <TextLink href="/privacy">privacy page</TextLink>
        </>
      }
    />
  );
}
