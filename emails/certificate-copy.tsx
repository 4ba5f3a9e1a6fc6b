import { showNumber } from '@/lib/numbers/job-number';
import { JobPage, Lines, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { fullDay, money } from './words';

export const certificateCopy: Writer<'certificate-copy'> = (
  { certificateNumber, revision, coveredUntil },
  setting,
) => {
  const number = showNumber(certificateNumber);
  return {
    to: 'customer',
    subject: `Your certificate ${number}`,
    summary: 'You can open and print it from the job page.',
    body: (
      <>
        <Title>Here is your certificate again</Title>
        <Para>It says what is covered on your unit, until when, what is not, and how to claim.</Para>
        <Lines
          items={[
            { term: 'Certificate', text: number, isMono: true },
            { term: 'Revision', text: String(revision) },
          ]}
        />
        <JobPage setting={setting}>Open the certificate on the job page</JobPage>
        <Next
          what="Keep it, on paper or on the phone. If the fault comes back, open a claim with its number. You need no receipt."
          when={
            coveredUntil
              ? `It covers until the end of ${fullDay(coveredUntil, setting)}. That is later than it states: days in which we had the unit were given back.`
              : 'Cover ends on the days that the certificate states.'
          }
          costs={`The copy is free of charge (${money(0, setting)}).`}
        />
      </>
    ),
  };
};
