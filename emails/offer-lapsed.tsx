import { JobPage, Next, Para, Title } from './frame';
import type { Setting, Writer } from './letter';
import { cost, fullDay, money } from './words';

export const offerLapsed: Writer<'offer-lapsed'> = (
  { revision, gross, validUntil, isFirst = false, isAfterInspection = false },
  setting,
) => ({
  to: 'customer',
  subject: `The ${isFirst || isAfterInspection ? '' : 'new '}price is no longer held: job ${setting.job.number}`,
  summary: `It held until ${fullDay(validUntil, setting)}. Your unit is safe with us.`,
  body: (
    <>
      <Title>
        {isFirst || isAfterInspection ? 'The price is no longer held' : 'The new price is no longer held'}
      </Title>
      <Para>
        We asked for your yes or no to {cost(gross, setting)} (revision {revision} of the quote). It held
        until {fullDay(validUntil, setting)}, and no answer came. {standsWithoutAnswer(isFirst, setting)}
      </Para>
      <Next
        what="We look at the price again and send you a new one. Want it at that price, or the unit back as it is? Write to us on the job page."
        when="You hear from us within a few days. The time we waited for you is not counted in our promise."
        costs={`Nothing today (${money(0, setting)}). ${isFirst ? 'You pay nothing before you have said yes to a price.' : 'We ask you before anything costs more than you agreed to.'}`}
      />
      <JobPage setting={setting}>See the job and write to us</JobPage>
    </>
  ),
});

/** What holds without the answer; the covered part of a claim is agreed to by its certificate. */
export function standsWithoutAnswer(isFirst: boolean, { job }: Setting): string {
  if (isFirst) return 'You have agreed to nothing, and nothing was done to your unit.';
  return job.kind === 'claim' && job.agreed === 0
    ? 'What your certificate covers stays free of charge. We have done nothing more to your unit.'
    : 'What you agreed to before still stands. We have done nothing more to your unit.';
}
