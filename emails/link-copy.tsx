import { JobPage, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { reach } from './words';

export const linkCopy: Writer<'link-copy'> = (_facts, setting) => ({
  to: 'customer',
  subject: `Your private link to job ${setting.job.number}`,
  summary: 'Your private link, sent again.',
  body: (
    <>
      <Title>Here is your private link again</Title>
      <Para>Somebody asked for this link on our page. We send it only to the address we have on file.</Para>
      <JobPage setting={setting}>Open the job</JobPage>
      <Para>Whoever has this link can see the job and answer for you. Keep it to yourself.</Para>
      <Next
        what="On the job page you see where your unit is and its papers, answer us, and write to us."
        when="The link works now. Older ones work as before."
        costs="The link costs nothing and changes no price."
      />
      {reach(setting) ? (
        <Para>Did you not ask for this? You need to do nothing. {reach(setting)}</Para>
      ) : null}
    </>
  ),
});
