import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { fullDay, reach } from './words';

export const unclaimedNotice: Writer<'unclaimed-notice'> = ({ notice, lastDay }, setting) => {
  const until = fullDay(lastDay, setting);
  return {
    to: 'customer',
    subject: `Your unit is still with us: job ${setting.job.number}`,
    summary: `Please tell us by ${until} how it gets back to you.`,
    body: (
      <>
        <Title>Your unit waits for you</Title>
        <Para>
          It is ready to go back, and we have not been able to send it. This is notice {notice}. We keep it
          safe and in one piece until we have heard from you, at least until the end of {until}.
        </Para>
        <JobPage setting={setting}>See what is missing</JobPage>
        <Next
          what="Look at the job page: it says whether a payment or an address is missing. If something stands in the way, tell us."
          when={`Please answer by ${until}. What a workshop may do with a unit that nobody claims is set by the law of the place, and we write to you before anything happens to it.`}
          costs="This notice costs nothing. What is left to pay stands on the job page and has not changed."
        />
        {reach(setting) ? <Para>{reach(setting)}</Para> : null}
      </>
    ),
  };
};
