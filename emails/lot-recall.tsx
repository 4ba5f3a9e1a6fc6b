import { isCell } from '@/lib/bench/rules/recall-text';
import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { reach } from './words';

export const lotRecall: Writer<'lot-recall'> = ({ part, lot, text }, setting) => ({
  to: 'customer',
  subject: `Please read: a part in your ${setting.job.unit}, job ${setting.job.number}`,
  summary: isCell(part)
    ? 'Please stop using and charging it until you have read this.'
    : 'Please stop using it until you have read this.',
  body: (
    <>
      <Title>About a part in your unit</Title>
      <Para>
        When we repaired your {setting.job.unit} we fitted this part: {part}, lot {lot}. What we ask of you
        now:
      </Para>
      <Words from={setting.workshop.name}>{text}</Words>
      <JobPage setting={setting}>Answer on the job page</JobPage>
      <Next
        what="Do what the letter says, and tell us that you have read it. We then tell you how we put it right."
        when="Now, please. Do not wait until something happens."
        costs="Nothing. Putting it right, and the way there and back, are free of charge for you."
      />
      {reach(setting) ? <Para>{reach(setting)}</Para> : null}
    </>
  ),
});
