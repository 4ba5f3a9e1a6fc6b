import { showNumber } from '@/lib/numbers/job-number';
import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { OpenedAgainPart } from './opened-again-part';
import { agreedCost } from './words';

export const claimReopened: Writer<'claim-reopened'> = (facts, setting) => {
  const { workshop } = setting;
  const claim = showNumber(facts.claimNumber);
  return {
    to: 'customer',
    subject: `We look at claim ${claim} again`,
    summary: 'The ruling we sent you no longer stands. We send you a new one.',
    body: (
      <>
        <Title>We look at your claim again</Title>
        <Para>
          {`We sent you a ruling on claim ${claim}. It no longer stands: we found that we have to look again.`}
        </Para>
        <Words from={workshop.name}>{facts.reason}</Words>
        <OpenedAgainPart facts={facts} setting={setting} />
        <Next
          what="We look at your unit anew, and write to you with the new ruling and its reasons. You need to do nothing."
          when={`Within ${workshop.answerWithin}.`}
          costs={agreedCost(setting)}
        />
        <JobPage setting={setting}>See the job</JobPage>
        {facts.mayContest ? (
          <Para>
            You have not asked us to look again yourself. After the new ruling you still can, once, as long as
            the unit is with us.
          </Para>
        ) : null}
      </>
    ),
  };
};
