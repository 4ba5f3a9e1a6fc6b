import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { factsOf } from '@/lib/jobs/facts';
import type { JobRecord } from '@/lib/jobs/records';
import { lastWaiting } from '@/lib/jobs/rules/settled';
import { TOLD_BY, TOLD_BY_LABELS } from '@/lib/jobs/rules/told';
import { type ToldAnswer, toldAnswers } from '@/lib/jobs/rules/told-answers';
import { formatMoney } from '@/lib/money/amount';
import { offerOf } from '@/lib/quotes/rules/agreed';
import { isHeld } from '@/lib/quotes/rules/held-price';
import { standingNoOfJob } from '@/lib/quotes/stored-held-no';
import { readOfferWords, readYesAfterNoWords } from '@/lib/quotes/stored-offer-words';
import { owedIfWithdrawn } from '@/lib/quotes/stored-withdrawal';
import type { WorkshopCard } from '@/lib/workshop/records';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';
import { writeTold } from './told-actions';

const WITHDRAWN = 'They withdraw from the contract';

type JobProps = Pick<SheetProps, 'job' | 'workshop'>;

/** An answer that came some other way than on the customer's page, kept as that: their buttons are theirs to press. */
export function ToldPart({ job, workshop }: JobProps) {
  const today = dayInZone(now(), workshop.timeZone);
  const facts = factsOf(job, today);
  const no = standingNoOfJob(job);
  const open = toldAnswers(facts, { hasNo: no !== null });
  if (open.length === 0) return null;
  const asked = offerOf(job) ?? no;
  const owed = facts.withdrawUntil === null ? null : owedIfWithdrawn(job);
  const words = answerWords(job, workshop);
  const label = open.every((answer) => answer === 'withdrawn') ? WITHDRAWN : 'They told us their answer';
  const isYesTheirs = facts.hasOpenOffer && !open.includes('accepted');
  return (
    <ActionForm
      action={writeTold.bind(null, job.number)}
      hidden={{
        ...carriedFields(job.version),
        seen: lastWaiting(job.messages)?.id ?? '',
        ...(asked && { revision: asked.revision }),
        ...(owed !== null && { shownOwed: owed }),
      }}
      label={label}
    >
      <ConfirmButton
        label={label}
        question="What did they tell us?"
        confirm="Write it down"
        consequence="Counts as their answer, and your name is kept with it. They get a mail that says what was written down, and to tell us if it was not so."
      >
        <RadioGroup
          name="answer"
          label="Their answer"
          hint={
            isYesTheirs
              ? 'A yes would make the contract, so they give it on their page, where the terms are agreed to.'
              : undefined
          }
          choices={open.map((value) => ({ value, ...words[value]() }))}
          defaultValue={open.length === 1 ? open[0] : undefined}
        />
        <HowTold latest={today} shown={today} />
      </ConfirmButton>
    </ActionForm>
  );
}

/** How, when and in which words: what is kept with every answer that was told. `shown` is the day that the form begins with. */
export function HowTold({ latest, shown, hint = '' }: { latest: Day; shown?: Day; hint?: string }) {
  return (
    <>
      <RadioGroup
        name="how"
        label="How they told us"
        choices={TOLD_BY.map((value) => ({ value, label: TOLD_BY_LABELS[value] }))}
      />
      <TextField
        name="on"
        label="On which day"
        hint={`Of a letter, the day it was posted.${hint}`}
        type="date"
        width="short"
        max={latest}
        defaultValue={shown}
      />
      <TextArea
        name="words"
        label="What they said"
        hint="As near to their own words as you can. They read it in the mail."
        rows={3}
        maxLength={1000}
      />
    </>
  );
}

/** What each answer is called, and what is agreed to or asked for by it, in the words of the customer's own buttons. */
function answerWords(job: JobRecord, workshop: WorkshopCard): Record<ToldAnswer, () => AnswerWords> {
  const today = dayInZone(now(), workshop.timeZone);
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const offer = offerOf(job);
  const asked = offer && readOfferWords(job, offer, { workshop, today });
  const declined = standingNoOfJob(job);
  const { withdrawUntil } = factsOf(job, today);
  return {
    accepted: () => ({ label: 'Yes', hint: asked?.agreed }),
    declined: () => ({ label: 'No', hint: asked?.declined }),
    'accepted-after-no': () => ({
      label: 'Yes after all',
      hint: declined && yesAfterNoHint(job, declined, { workshop, today }),
    }),
    contested: () => ({
      label: 'They see the ruling another way',
      hint: 'Once for each claim, until the unit leaves. The ruling no longer stands, a price that waits is off, and the claim waits to be ruled anew.',
    }),
    withdrawn: () => ({
      label: WITHDRAWN,
      hint: `They need give no reason nor use that word, if they told us by ${withdrawUntil ? formatDay(withdrawUntil, workshop.locale, 'weekday') : ''}. For the work so far they owe ${money(owedIfWithdrawn(job))}, and the way back is free.`,
    }),
  };
}

/** What is agreed to, and, where the price is no longer held, by when it must have been said. */
function yesAfterNoHint(
  job: JobRecord,
  declined: NonNullable<ReturnType<typeof standingNoOfJob>>,
  { workshop, today }: { workshop: WorkshopCard; today: Day },
): string {
  const { agreed } = readYesAfterNoWords(job, declined, { workshop, today });
  const until = dayFromDate(declined.validUntil);
  return isHeld(until, today)
    ? agreed
    : `${agreed} The price was held until ${formatDay(until, workshop.locale, 'weekday')}: only if they told us by then.`;
}

type AnswerWords = { label: string; hint: string | null | undefined };
