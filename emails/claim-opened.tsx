import { showNumber } from '@/lib/numbers/job-number';
import { KEEP_POSTAGE_RECEIPT } from '@/lib/warranty/rules/postage-words';
import { JobPage, Lines, Next, Para, Title } from './frame';
import type { Setting, Writer } from './letter';
import { money } from './words';

export const claimOpened: Writer<'claim-opened'> = (facts, setting) => ({
  to: 'customer',
  subject: `Your claim ${showNumber(facts.claimNumber)} is open`,
  summary: facts.mustNotPost
    ? 'Please do not post the unit. Opening the claim is free of charge.'
    : 'Post the unit when it suits you. Opening the claim is free of charge.',
  body: (
    <>
      <Title>We are sorry that it failed again</Title>
      <Para>Your claim is open and counts from today, not from the day the parcel is here.</Para>
      {facts.isLate ? (
        <Para>
          The cover had ended a short time before. A person decides whether your claim is let in, once the
          unit is here, and tells you in writing. If you want to know more before you post it, ask us on the
          job page.
        </Para>
      ) : null}
      {facts.isSerialClose ? (
        <Para>
          The serial you gave is close to the one on the certificate, but not the same. A person compares them
          once the unit is here. If it is another unit, the certificate does not cover it.
        </Para>
      ) : null}
      <Lines
        items={[
          { term: 'Claim', text: showNumber(facts.claimNumber), isMono: true },
          { term: 'Certificate', text: showNumber(facts.certificateNumber), isMono: true },
          { term: 'Job', text: setting.job.number, isMono: true },
        ]}
      />
      {facts.mustNotPost ? <StayNext setting={setting} /> : <PostNext setting={setting} />}
    </>
  ),
});

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
        costs={`The claim and our inspection are free of charge (${money(0, setting)}). What is covered is repaired free of charge. If anything would cost you money, we ask you first.`}
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
        costs={`The claim and our inspection are free of charge (${money(0, setting)}). What is covered is repaired free of charge. If anything would cost you money, we ask you first. ${KEEP_POSTAGE_RECEIPT}`}
      />
      {setting.job.hasLithiumBattery ? (
        <Para>
          Please do not post the unit if its battery is swollen, leaking, hot or damaged. Tell us instead, and
          take the battery to a collection point. Your carrier’s rules and local rules come first.
        </Para>
      ) : null}
    </>
  );
}
