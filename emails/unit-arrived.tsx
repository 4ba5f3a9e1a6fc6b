import type { Day } from '@/lib/calendar/day';
import { JobPage, Next, Para, Title, Words } from './frame';
import type { Setting, Writer } from './letter';
import { agreedCost, fullDay, money } from './words';

export const unitArrived: Writer<'unit-arrived'> = (
  { promisedOn, differences, isUnbooked = false },
  setting,
) => ({
  to: 'customer',
  subject: `Your parcel is here: job ${setting.job.number}`,
  summary: summary(promisedOn, setting),
  body: (
    <>
      <Title>Your unit is with us</Title>
      <Para>
        {isUnbooked
          ? 'It came without a booking, so we have opened a job for you. We have unpacked it and written down what came. The job page is yours: read it, and tell us if something on it is wrong.'
          : 'We have unpacked it, compared it with your booking and taken photos of how it arrived.'}
      </Para>
      {differences.length > 0 ? (
        <Words from={isUnbooked ? 'What came with it' : 'What differs from the booking'}>
          {differences.join('\n')}
        </Words>
      ) : isUnbooked ? null : (
        <Para>It is all as you booked it.</Para>
      )}
      <Next
        what={
          setting.job.kind === 'claim'
            ? 'We look at it beside the record of the first repair. Then we tell you our ruling, with the reasons. What is covered is repaired free of charge.'
            : isUnbooked
              ? 'We find out what is wrong and send you a price. Nothing is repaired before you have said yes to it on the job page. If you say no, your unit comes back free of charge.'
              : 'It waits for its turn on the bench. We find out what is wrong and repair it. If the price has to change, we ask you before we go on.'
        }
        when={
          setting.job.kind === 'claim'
            ? `Our ruling comes within ${setting.workshop.answerWithin}.${promisedOn ? ` If the claim is covered, we promise it ready to go back by ${fullDay(promisedOn, setting)}.` : ''}`
            : promisedOn
              ? `We promise it ready to go back by ${fullDay(promisedOn, setting)}.`
              : 'We tell you a date once we have looked at it.'
        }
        costs={
          setting.job.kind === 'claim'
            ? `The inspection is free of charge (${money(0, setting)}). We ask you before anything costs you money.`
            : agreedCost(setting)
        }
      />
      <JobPage setting={setting}>See the job and its photos</JobPage>
    </>
  ),
});

function summary(promisedOn: Day | null, setting: Setting): string {
  if (setting.job.kind === 'claim') return `Our ruling comes within ${setting.workshop.answerWithin}.`;
  return promisedOn
    ? `We promise your unit ready by ${fullDay(promisedOn, setting)}.`
    : 'We now find out what is wrong, then tell you a date.';
}
