import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { reach } from './words';

export const lotRecallLifted: Writer<'lot-recall-lifted'> = ({ part, lot, text }, setting) => ({
  to: 'customer',
  subject: `Our letter about a part in your ${setting.job.unit} was a mistake, job ${setting.job.number}`,
  summary: 'What we asked of you about a part in your unit no longer holds.',
  body: (
    <>
      <Title>Our letter about a part in your unit was a mistake</Title>
      <Para>
        We wrote to you about this part in your {setting.job.unit}: {part}, lot {lot}. What we asked of you
        then no longer holds:
      </Para>
      <Words from={setting.workshop.name}>{text}</Words>
      <JobPage setting={setting}>The job page</JobPage>
      <Next
        what="Nothing. If you have sent the unit to us because of that letter, or want to know more, write to us on the job page."
        when="Whenever you like."
        costs="Nothing."
      />
      {reach(setting) ? <Para>{reach(setting)}</Para> : null}
    </>
  ),
});
