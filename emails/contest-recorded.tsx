import { showNumber } from '@/lib/numbers/job-number';
import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { OpenedAgainPart } from './opened-again-part';
import { ToldPart } from './told-part';
import { agreedCost } from './words';

export const contestRecorded: Writer<'contest-recorded'> = (facts, setting) => {
  const { workshop } = setting;
  const claim = showNumber(facts.claimNumber);
  return {
    to: 'customer',
    subject: `We look at claim ${claim} again, as you asked`,
    summary: 'You see our ruling another way. The owner looks again.',
    body: (
      <>
        <Title>We look at your claim again</Title>
        <Para>
          {`You see our ruling on claim ${claim} another way. It no longer stands: we look again, and send you a new one.`}
        </Para>
        <ToldPart told={facts.told} as="your wish that we look again" setting={setting} />
        <OpenedAgainPart facts={facts} setting={setting} />
        <Next
          what="The owner looks at your unit and reads what you said. We write to you with the new ruling and its reasons. You need to do nothing."
          when={`Within ${workshop.answerWithin}.`}
          costs={agreedCost(setting)}
        />
        <JobPage setting={setting}>See the job</JobPage>
        <Para>You can ask this once for each claim. The new ruling stands.</Para>
      </>
    ),
  };
};
