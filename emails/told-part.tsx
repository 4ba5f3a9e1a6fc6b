import { heardOn, type Told, toldWhen } from '@/lib/jobs/rules/told';
import { Para, Words } from './frame';
import type { Setting } from './letter';
import { reach, thing } from './words';

type ToldProps = {
  told: Told | undefined;
  as: string;
  /** they had been written to that its price is no longer held */
  hadLapsed?: boolean | undefined;
  setting: Setting;
};

/**
 * Of an answer that staff wrote down: how it was given, what was said, and what to do where it was not so. Nothing for one that was
 * given on the customer's page. The message of a lapse was no mistake where the answer was in the post.
 */
export function ToldPart({ told, as, hadLapsed = false, setting }: ToldProps) {
  if (told === undefined) return null;
  const when = toldWhen(told, setting.workshop.locale);
  return (
    <>
      <Para>
        You told us {when}, and we wrote it down as {as}. Not so? Tell us at once.{' '}
        {reach(setting) || `Write to us on the ${thing(setting)} page.`}
      </Para>
      {hadLapsed ? (
        <Para>
          We wrote to you that no answer had come and that the price is no longer held.{' '}
          {heardOn(told) === null
            ? 'Your letter was posted while it was held, so it counts, and that message no longer does.'
            : 'That was a mistake of ours: your answer came in time, and it counts. We are sorry.'}
        </Para>
      ) : null}
      {told.words === '' ? null : <Words from="What we wrote down of your words">{told.words}</Words>}
    </>
  );
}
