import { JobPage, Next, Title, Words } from './frame';
import type { Writer } from './letter';

/** Where a price had been sent, the words below it say whether the unit cannot be repaired or the customer asked. */
export const quoteTurnedDown: Writer<'quote-turned-down'> = ({ text, hadPrice }, setting) => {
  const title = hadPrice ? 'This quote is closed' : 'We cannot repair this one';
  return {
    to: 'customer',
    subject: `${title}: quote ${setting.job.number}`,
    summary: `About ${setting.job.unit}. Nothing is owed.`,
    body: (
      <>
        <Title>{title}</Title>
        <Words from={setting.workshop.name}>{text}</Words>
        <JobPage setting={setting}>See your request</JobPage>
        <Next
          what={
            hadPrice
              ? 'The price no longer stands, and nothing is booked. You can ask us for a new one, or about another unit.'
              : 'We close the request. You can write to us about it, or ask about another unit.'
          }
          when="When it suits you."
          costs="You owe us nothing."
        />
      </>
    ),
  };
};
