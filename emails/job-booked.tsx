import { statedTimeWords } from '@/lib/promise/rules/promise-words';
import { laterNoWords } from '@/lib/quotes/rules/after-no';
import { JobPage, Lines, Next, Para, Title } from './frame';
import type { Setting, Writer } from './letter';
import { AgreedTerms } from './terms-part';
import { LawsWords, RightToWithdraw } from './withdrawal-part';
import { cost, money } from './words';

export const jobBooked: Writer<'job-booked'> = (_facts, setting) => {
  const { job } = setting;
  return {
    to: 'customer',
    subject: `Job ${job.number} is booked: ${job.unit}`,
    summary: `Post the unit when it suits you. The agreed price is ${cost(job.agreed, setting)}.`,
    body: (
      <>
        <Title>{job.isInspection ? 'Your inspection is booked' : 'Your repair is booked'}</Title>
        <Para>Thank you. The next step is yours: pack the unit and post it to us.</Para>
        <JobPage setting={setting}>Open the job and print the packing slip</JobPage>
        <Lines
          items={[
            { term: 'Repair', text: job.repair },
            { term: 'Agreed price', text: cost(job.agreed, setting) },
          ]}
        />
        <Next
          what="Put the packing slip in the parcel. No printer? Write the job number on a sheet of paper."
          when={`Post it when it suits you. ${fromArrival(setting)}`}
          costs={costs(setting)}
        />
        {job.hasLithiumBattery ? (
          <Para>
            Please do not post the unit if its battery is swollen, leaking, hot, wet or damaged. Do not open
            it: write to us, and we tell you what to do. Your carrier’s rules and local rules come first.
          </Para>
        ) : null}
        <RightToWithdraw setting={setting} />
        <Para>
          The address above is your key to this job. Whoever has it can see the job and answer for you.
        </Para>
        <AgreedTerms setting={setting} />
        <LawsWords setting={setting} />
      </>
    ),
  };
};

function fromArrival({ job, withdrawal, workshop }: Setting): string {
  if (job.stated === undefined) return 'We write to you the day it arrives.';
  const waitsUntil = withdrawal && !withdrawal.isStartAsked ? withdrawal.until : null;
  return statedTimeWords({ ...job.stated, waitsUntil }, workshop.locale);
}

/** What is paid and when, and what a no to more would cost. */
function costs(setting: Setting): string {
  const { job } = setting;
  const isInspection = job.isInspection ?? false;
  const what = isInspection ? 'inspection' : 'repair';
  if (job.agreed === 0) return `The ${what} is free of charge for you (${money(0, setting)}).`;
  const fees = { inspectionFee: job.inspectionFee ?? 0, returnFee: job.returnFee ?? 0 };
  const more = laterNoWords(fees, (minor) => money(minor, setting));
  return isInspection
    ? `${money(job.agreed, setting)} with tax, to be paid before we send the unit back. After the inspection we send you a price for the repair. Nothing is repaired before you say yes to it. ${more}`
    : `${money(job.agreed, setting)} with tax, to be paid when the repair is done and before we send the unit back. If we find more, we ask you first. ${more}`;
}
