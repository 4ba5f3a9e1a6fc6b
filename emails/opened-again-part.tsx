import type { Day } from '@/lib/calendar/day';
import { Para } from './frame';
import type { Setting } from './letter';
import { ReadyNoMore } from './ready-no-more';
import { cost, fullDay } from './words';

type OpenedAgainProps = {
  facts: {
    askedGross?: number | undefined;
    wasReady?: boolean | undefined;
    promisedOn?: Day | undefined;
  };
  setting: Setting;
};

/** What no longer counts for a customer whose claim is looked at again: that the unit is ready, and a price they were asked about. */
export function OpenedAgainPart({ facts, setting }: OpenedAgainProps) {
  const { askedGross, wasReady = false, promisedOn } = facts;
  return (
    <>
      {wasReady ? (
        <ReadyNoMore after={promisedOn ? ` We promise it ready by ${fullDay(promisedOn, setting)}.` : ''} />
      ) : null}
      {askedGross === undefined ? null : (
        <Para>
          {`You need not answer the price of ${cost(askedGross, setting)} that we asked you about. If one is needed after the new ruling, we ask you again.`}
        </Para>
      )}
    </>
  );
}
