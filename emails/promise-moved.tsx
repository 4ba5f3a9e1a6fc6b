import { JobPage, Lines, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { agreedCost, fullDay } from './words';

export const promiseMoved: Writer<'promise-moved'> = ({ from, to, reason }, setting) => {
  const isLater = to > from;
  return {
    to: 'customer',
    subject: `New date for job ${setting.job.number}: ${fullDay(to, setting)}`,
    summary: isLater
      ? `We cannot keep ${fullDay(from, setting)}. The new date is ${fullDay(to, setting)}.`
      : `Your unit will be ready sooner, by ${fullDay(to, setting)}.`,
    body: (
      <>
        <Title>{isLater ? 'We need more time, and we are sorry' : 'Your unit will be ready sooner'}</Title>
        <Para>
          {isLater
            ? 'We promised you a date and cannot keep it. You have done nothing wrong and need to do nothing.'
            : 'We are further than we thought. You need to do nothing.'}
        </Para>
        <Words from="Why">{reason}</Words>
        <Lines
          items={[
            { term: 'Date until now', text: fullDay(from, setting) },
            { term: 'New date', text: fullDay(to, setting) },
          ]}
        />
        <Next
          what="We go on with the repair and write when the unit is ready."
          when={`Ready to go back by ${fullDay(to, setting)}.`}
          costs={agreedCost(setting)}
        />
        <JobPage setting={setting}>See the job</JobPage>
      </>
    ),
  };
};
