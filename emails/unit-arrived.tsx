import type { FactsOf } from '@/lib/mail/rules/content';
import { keptWords } from '@/lib/promise/rules/promise-words';
import { JobPage, Next, Para, Title, Words } from './frame';
import type { Setting, Writer } from './letter';
import { agreedCost, fullDay, money } from './words';

type Facts = FactsOf<'unit-arrived'>;
type Parts = {
  summary: string;
  /** how it was taken in */
  how: string;
  /** what the differences are called, and what is said without any */
  differ: string;
  same: string | null;
  what: string;
  when: string;
  costs: string;
};

export const unitArrived: Writer<'unit-arrived'> = (facts, setting) => {
  const parts = caseOf(facts, setting)(facts, setting);
  return {
    to: 'customer',
    subject: `Your parcel is here: job ${setting.job.number}`,
    summary: parts.summary,
    body: (
      <>
        <Title>Your unit is with us</Title>
        {facts.isFound ? <Para>{FOUND}</Para> : null}
        <Para>{parts.how}</Para>
        {facts.differences.length > 0 ? (
          <Words from={parts.differ}>{facts.differences.join('\n')}</Words>
        ) : (
          parts.same && <Para>{parts.same}</Para>
        )}
        <Next what={parts.what} when={parts.when} costs={parts.costs} />
        <JobPage setting={setting}>{facts.hasPhotos ? 'See the job and its photos' : 'See the job'}</JobPage>
      </>
    ),
  };
};

function caseOf({ isUnbooked }: Facts, { job }: Setting): (facts: Facts, setting: Setting) => Parts {
  if (job.kind === 'claim') return claimed;
  if (isUnbooked) return unbooked;
  return job.isInspection ? inspected : booked;
}

/** What the first message said is not so. */
const FOUND =
  'We first wrote to you that your parcel came without a booking. That was our mistake: it is the one you told us of, and everything stands as you agreed to it. You need not do anything about the first message.';

const compared = ({ hasPhotos }: Facts) => ({
  how: hasPhotos
    ? 'We have unpacked it, compared it with your booking and taken photos of how it arrived.'
    : 'We have unpacked it and compared it with your booking.',
  differ: 'What differs from the booking',
  same: 'Everything is as you booked it.',
});

/** A unit that came before its claim: nothing was told of the parcel that could differ. */
const OPENED = {
  how: 'It came without a claim, so we opened a claim for you; another message has its number. We have unpacked it and written down what came.',
  differ: 'What came with it',
  same: null,
};

function booked(facts: Facts, setting: Setting): Parts {
  return {
    ...compared(facts),
    ...dated(facts, setting),
    what: 'It waits for its turn on the bench. We find out what is wrong and repair it. If the price has to change, we ask you before we go on.',
    costs: agreedCost(setting),
  };
}

function inspected(facts: Facts, setting: Setting): Parts {
  return {
    ...compared(facts),
    ...dated(facts, setting),
    what: 'It waits for its turn on the bench. We find out what is wrong and send you a price for the repair. Nothing is repaired before you have said yes to it on the job page.',
    costs: agreedCost(setting),
  };
}

function unbooked(facts: Facts, setting: Setting): Parts {
  return {
    ...dated(facts, setting),
    how: 'It came without a booking, so we have opened a job for you. We have unpacked it and written down what came. The job page is yours: read it, and tell us if something on it is wrong.',
    differ: 'What came with it',
    same: null,
    what: 'We find out what is wrong and send you a price. Nothing is repaired before you have said yes to it on the job page. If you say no, your unit comes back free of charge.',
    costs: agreedCost(setting),
  };
}

function claimed(facts: Facts, setting: Setting): Parts {
  const { promisedOn, isUnbooked, kept } = facts;
  const ruling = `Our ruling comes within ${setting.workshop.answerWithin}.`;
  return {
    ...(isUnbooked ? OPENED : compared(facts)),
    summary: ruling,
    what: 'We look at it beside the record of the first repair. Then we tell you our ruling, with the reasons. What is covered is repaired free of charge.',
    when: promisedOn
      ? `${ruling} If the claim is covered, we promise it ready to go back by ${fullDay(promisedOn, setting)}.${keptSoFar(kept)}`
      : ruling,
    costs: `The inspection is free of charge (${money(0, setting)}). We ask you before anything costs you money.`,
  };
}

function dated({ promisedOn, kept }: Facts, setting: Setting): Pick<Parts, 'summary' | 'when'> {
  if (!promisedOn) {
    return {
      summary: 'We now find out what is wrong, then tell you a date.',
      when: 'We tell you a date once we have looked at it.',
    };
  }
  const by = fullDay(promisedOn, setting);
  return {
    summary: `We promise your unit ready by ${by}.`,
    when: `We promise it ready to go back by ${by}.${keptSoFar(kept)}`,
  };
}

function keptSoFar(kept: Facts['kept']): string {
  const words = keptWords(kept ?? null);
  return words === null ? '' : ` ${words}`;
}
