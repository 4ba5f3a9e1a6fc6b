import { showNumber } from '@/lib/numbers/job-number';
import { JobPage, type Line, Lines, Next, Para, PlainLink, Title } from './frame';
import type { Writer } from './letter';
import { leftSentence } from './money-left';
import { money } from './words';

export const unitSentBack: Writer<'unit-sent-back'> = (facts, setting) => {
  const { job } = setting;
  const certificate = facts.certificateNumber ? showNumber(facts.certificateNumber) : null;
  const lines: Line[] = [{ term: 'Carrier', text: facts.carrier }];
  if (facts.carrierReference) {
    lines.push({ term: 'Carrier’s reference', text: facts.carrierReference, isMono: true });
  }
  if (facts.tracking) lines.push({ term: 'Where it is', text: <PlainLink href={facts.tracking} /> });
  if (certificate) {
    const revision = facts.revision && facts.revision > 1 ? ` · revision ${facts.revision}` : '';
    lines.push({ term: 'Certificate', text: `${certificate}${revision}`, isMono: true });
  }
  return {
    to: 'customer',
    subject: `On its way to you: job ${job.number}`,
    summary: certificate
      ? `Sent with ${facts.carrier}. Your certificate is ${certificate}.`
      : `Sent with ${facts.carrier}.`,
    body: (
      <>
        <Title>Your unit is on its way back</Title>
        <Para>We have handed it to the carrier today.</Para>
        <Lines items={lines} />
        <Next
          what={
            certificate
              ? 'Try the unit when it is there. Keep the certificate: it says what is covered, until when, and how to claim. If the fault comes back, open a claim with its number. You need no receipt.'
              : 'Look at the parcel before you open it, and tell us if something is wrong.'
          }
          when={`${
            facts.carrierReference
              ? facts.tracking
                ? 'The carrier’s page shows where the parcel is.'
                : 'The carrier’s reference shows where the parcel is.'
              : 'The carrier brings it on its usual days.'
          }${certificate ? ' The certificate states when cover begins and ends.' : ''}`}
          costs={
            facts.owed
              ? `${leftSentence(facts.owed, setting)} It stays owed; the job page shows how to pay.`
              : `Nothing more (${money(0, setting)}).`
          }
        />
        <JobPage setting={setting}>{certificate ? 'See the job and the certificate' : 'See the job'}</JobPage>
      </>
    ),
  };
};
