import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { factsOf } from '@/lib/jobs/facts';
import { lastWaiting } from '@/lib/jobs/rules/settled';
import { lateAnswers } from '@/lib/jobs/rules/told-answers';
import { formatMoney } from '@/lib/money/amount';
import { lapsedPrice } from '@/lib/quotes/rules/lapsed-price';
import { readOfferWords } from '@/lib/quotes/stored-offer-words';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';
import { writeTold } from './told-actions';
import { HowTold } from './told-part';

/** An answer that came while its price was held and that nobody had written down when it lapsed. */
export function ToldLatePart({ job, workshop }: Pick<SheetProps, 'job' | 'workshop'>) {
  const lapsed = lapsedPrice(job.quotes[0]?.revisions ?? [], job.events);
  if (!lapsed) return null;
  const { currency, locale, timeZone } = workshop;
  const today = dayInZone(now(), timeZone);
  const facts = factsOf(job, today);
  const open = lateAnswers(facts);
  if (open.length === 0) return null;
  const until = dayFromDate(lapsed.validUntil);
  const lastDay = formatDay(until, locale, 'weekday');
  const { agreed, declined } = readOfferWords(job, lapsed, { workshop, today });
  const words = {
    accepted: { label: 'Yes', hint: agreed },
    declined: { label: 'No', hint: declined },
  };
  return (
    <ActionForm
      action={writeTold.bind(null, job.number)}
      hidden={{
        ...carriedFields(job.version),
        seen: lastWaiting(job.messages)?.id ?? '',
        revision: lapsed.revision,
      }}
      label="They had answered before the price lapsed"
    >
      <ConfirmButton
        label="They had answered before the price lapsed"
        question={`What did they tell us about the ${formatMoney(lapsed.grossMinor, currency, locale)}?`}
        confirm="Write it down"
        consequence={`Only if they told us by ${lastDay}, the last day the price was held. It then counts as if it had not lapsed, and your name is kept with it. They get a mail that says what was written down, and to tell us if it was not so.`}
      >
        <RadioGroup
          name="answer"
          label="Their answer"
          hint={
            facts.isContractMade
              ? undefined
              : 'A yes would make the contract, and they give it on their page: ask for the price again.'
          }
          choices={open.map((value) => ({ value, ...words[value] }))}
          defaultValue={open.length === 1 ? open[0] : undefined}
        />
        <HowTold latest={until} hint={` The last day that counts is ${lastDay}.`} />
      </ConfirmButton>
    </ActionForm>
  );
}
