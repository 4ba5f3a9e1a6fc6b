import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { fullDay, reach } from './words';

export const unclaimedDecided: Writer<'unclaimed-decided'> = ({ told, note, until }, setting) => ({
  to: 'customer',
  subject: `What becomes of your unit: job ${setting.job.number}`,
  summary: told,
  body: (
    <>
      <Title>What we decided about your unit</Title>
      <Para>
        It was ready to go back, and we wrote to you several times without an answer. {told}
        {until ? ` We keep it at least until the end of ${fullDay(until, setting)}.` : ''}
      </Para>
      <Words from={setting.workshop.name}>{note}</Words>
      <JobPage setting={setting}>See the job</JobPage>
      <Next
        what={
          until
            ? 'Tell us how it gets back to you, and we send it.'
            : 'If you think this should not have happened, write to us. Your rights by law stay as they are.'
        }
        when={until ? `Please answer by ${fullDay(until, setting)}.` : 'As soon as you can.'}
        costs="Nothing is added to what stands on the job page."
      />
      {reach(setting) ? <Para>{reach(setting)}</Para> : null}
    </>
  ),
});
