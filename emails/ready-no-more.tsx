import { Para } from './frame';

/** For a customer who was told that the unit is ready, and that is worked on again; `after` is what follows, if anything. */
export function ReadyNoMore({ after = '' }: { after?: string }) {
  return (
    <Para>
      It is not ready to go back any more: we do not post it yet. If you were going to collect it, please wait
      until we write that it is ready again.{after}
    </Para>
  );
}
