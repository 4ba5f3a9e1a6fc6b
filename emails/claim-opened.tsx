import type { FactsOf } from '@/lib/mail/rules/content';
import { showNumber } from '@/lib/numbers/job-number';
import { KEEP_POSTAGE_RECEIPT } from '@/lib/warranty/rules/postage-words';
import { JobPage, Lines, Next, Para, Title } from './frame';
import type { Setting, Writer } from './letter';
import { money } from './words';

type Facts = FactsOf<'claim-opened'>;

export const claimOpened: Writer<'claim-opened'> = (facts, setting) => ({
  to: 'customer',
  subject: `Your claim ${showNumber(facts.claimNumber)} is open`,
  summary: summaryOf(facts),
  body: (
    <>
      <Title>We are sorry that it failed again</Title>
      <Para>
        {facts.isHere
          ? 'Your claim is open and counts from today.'
          : 'Your claim is open and counts from today, not from the day the parcel is here.'}
        {facts.byUs
          ? ' We opened it for you. The job page is yours: read it, and tell us if something on it is wrong.'
          : null}
      </Para>
      {facts.isLate ? <Para>{lateWords(facts)}</Para> : null}
      {facts.isSerialClose ? (
        <Para>
          {`The serial ${facts.isHere ? 'on the unit' : 'you gave'} is close to the one on the certificate, but not the same. A person compares them${facts.isHere ? '' : ' once the unit is here'}. If it is another unit, the certificate does not cover it.`}
        </Para>
      ) : null}
      <Lines
        items={[
          { term: 'Claim', text: showNumber(facts.claimNumber), isMono: true },
          { term: 'Certificate', text: showNumber(facts.certificateNumber), isMono: true },
          { term: 'Job', text: setting.job.number, isMono: true },
        ]}
      />
      {nextOf(facts, setting)}
    </>
  ),
});

function summaryOf({ isHere, mustNotPost }: Facts): string {
  const free = 'Opening the claim is free of charge.';
  if (isHere) return `Your unit is here already. ${free}`;
  return mustNotPost ? `Please do not post the unit. ${free}` : `Post the unit when it suits you. ${free}`;
}

function lateWords({ isHere }: Facts): string {
  const decided = 'The cover had ended before. A person decides whether your claim is let in';
  return isHere
    ? `${decided}, and tells you in writing.`
    : `${decided}, once the unit is here, and tells you in writing. If you want to know more before you post it, ask us on the job page.`;
}

function nextOf({ isHere, mustNotPost }: Facts, setting: Setting) {
  if (isHere) return <HereNext setting={setting} />;
  return mustNotPost ? <StayNext setting={setting} /> : <PostNext setting={setting} />;
}

function freeWords(setting: Setting): string {
  return `The claim and our inspection are free of charge (${money(0, setting)}). What is covered is repaired free of charge. If anything would cost you money, we ask you first.`;
}

function HereNext({ setting }: { setting: Setting }) {
  return (
    <>
      <JobPage setting={setting}>Open the job</JobPage>
      <Next
        what="Your unit is here already, so there is nothing to post. We look at it beside the record of the first repair, and tell you our ruling with the reasons in writing."
        when="Another message says what came with it, and when our ruling comes."
        costs={`${freeWords(setting)} ${KEEP_POSTAGE_RECEIPT}`}
      />
    </>
  );
}

/** A cell in doubt must not travel: how the unit gets here is arranged first (ADR, special provision 376). */
function StayNext({ setting }: { setting: Setting }) {
  return (
    <>
      <Para>
        Please do not post the unit. Its battery counts as damaged, and a damaged battery can set a parcel on
        fire. Stop using the unit and do not charge it. The job page says what to do instead. Your carrier’s
        rules and local rules come first.
      </Para>
      <JobPage setting={setting}>Open the job and read what to do</JobPage>
      <Next
        what="Write to us on the job page. We arrange with you how the unit, or its battery, is handed in or collected safely. Then we look at it and tell you our ruling with the reasons in writing."
        when={`When it suits you; your claim counts from today. We answer within ${setting.workshop.answerWithin}.`}
        costs={freeWords(setting)}
      />
    </>
  );
}

function PostNext({ setting }: { setting: Setting }) {
  return (
    <>
      <JobPage setting={setting}>Open the job and print the packing slip</JobPage>
      <Next
        what="Post the unit with the packing slip, or with the job number on a sheet of paper. We look at it beside the record of the first repair, and tell you our ruling with the reasons in writing."
        when="Post it when it suits you. We write when it is here, with a date."
        costs={`${freeWords(setting)} ${KEEP_POSTAGE_RECEIPT}`}
      />
      {setting.job.hasLithiumBattery ? (
        <Para>
          Please do not post the unit if its battery is swollen, leaking, hot, wet or damaged. Do not open it:
          write to us, and we tell you what to do. Your carrier’s rules and local rules come first.
        </Para>
      ) : null}
    </>
  );
}
