import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { fullDay, reach } from './words';

export const unclaimedNotice: Writer<'unclaimed-notice'> = (facts, setting) => {
  const { notice, isLast, storage } = facts;
  const until = fullDay(facts.lastDay, setting);
  return {
    to: 'customer',
    subject: isLast
      ? `Last notice: your unit is still with us, job ${setting.job.number}`
      : `Your unit is still with us: job ${setting.job.number}`,
    summary: `Please tell us by ${until} how it gets back to you.`,
    body: (
      <>
        <Title>Your unit waits for you</Title>
        <Para>
          It is ready to go back, and we have not been able to send it. This is notice {notice}
          {isLast ? ', and the last one' : ''}. We keep it safe and in one piece until we have heard from you,
          at least until the end of {until}.
        </Para>
        {storage ? <Words from={`About keeping it, from ${setting.workshop.name}`}>{storage}</Words> : null}
        <JobPage setting={setting}>See what is missing</JobPage>
        <Next
          what="Look at the job page: it says at the top what your unit waits for, and how you answer. If something stands in the way, tell us."
          when={
            isLast
              ? `Please answer by ${until}. After that we have to decide what becomes of your unit. What a workshop may do then is set by the law of the place, and we write to you about it.`
              : `Please answer by ${until}. What a workshop may do with a unit that nobody claims is set by the law of the place, and we write to you before anything happens to it.`
          }
          costs="This notice costs nothing. What is left to pay stands on the job page and has not changed."
        />
        {reach(setting) ? <Para>{reach(setting)}</Para> : null}
      </>
    ),
  };
};
