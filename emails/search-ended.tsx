import { SEARCH_END_WORDS } from '@/lib/jobs/rules/parcel-search';
import { JobPage, Next, Para, Title, Words } from './frame';
import type { Writer } from './letter';
import { money } from './words';

export const searchEnded: Writer<'search-ended'> = ({ how, note }, setting) => {
  const { job, workshop } = setting;
  const { told } = SEARCH_END_WORDS[how];
  const isLost = how === 'lost';
  return {
    to: 'customer',
    subject: `${isLost ? 'Your parcel is lost' : 'Your parcel was found'}: job ${job.number}`,
    summary: told,
    body: (
      <>
        <Title>{isLost ? 'Your parcel is lost' : 'Your parcel was found'}</Title>
        <Para>
          {isLost
            ? `${told} We have looked for it with the carrier, and it was not found. We are sorry.`
            : told}
        </Para>
        {note.trim() === '' ? null : <Words from={workshop.name}>{note}</Words>}
        <Next
          what={
            isLost
              ? 'Read above what we do about it. Do you see it otherwise, or do you have a question? Write to us on the job page.'
              : 'Has it not reached you, or did it come damaged? Write to us on the job page.'
          }
          when={isLost ? `We answer within ${workshop.answerWithin}.` : 'The job is closed.'}
          costs={`Nothing for this (${money(0, setting)}).`}
        />
        <JobPage setting={setting}>See the job and write to us</JobPage>
      </>
    ),
  };
};
