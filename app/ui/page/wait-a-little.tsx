import { waitSentence } from '../forms/wait-sentence';
import { Notice } from './notice';

/** In place of a page that was asked for too often: how long to wait. */
export function WaitALittle({ seconds }: { seconds: number }) {
  return (
    <Notice kind="stop" heading="Please wait a little">
      <p>{waitSentence(seconds)}</p>
    </Notice>
  );
}
