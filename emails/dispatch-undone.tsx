import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { money } from './words';

export const dispatchUndone: Writer<'dispatch-undone'> = (facts, setting) => {
  const { reason, wasCollected = false, hasCertificate = false, mayContest = false } = facts;
  const { job, workshop } = setting;
  return {
    to: 'customer',
    subject: `Your unit has not left yet: job ${job.number}`,
    summary: 'We wrote that it had left us. That was a mistake of ours: it is here and safe.',
    body: (
      <>
        <Title>Your unit is still here</Title>
        <Para>
          {wasCollected
            ? 'We wrote that you collected it.'
            : 'We wrote that it is on its way to you, with a carrier’s reference that does not count.'}{' '}
          That was a mistake of ours: your unit is here and safe. We are sorry.
        </Para>
        {hasCertificate ? <Para>The certificate we sent you stands. Keep it.</Para> : null}
        {mayContest ? (
          <Para>
            Do you see our ruling on your claim another way? As your unit is here, you can tell us so again,
            once, until it leaves. The button is on the job page, below our ruling.
          </Para>
        ) : null}
        {reason.trim() === '' ? null : <Words from={workshop.name}>{reason}</Words>}
        <Next
          what="You need do nothing. Is your address on the job page no longer right? Write to us there."
          when="We write to you when your unit really leaves."
          costs={`Nothing for this (${money(0, setting)}).`}
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
};
