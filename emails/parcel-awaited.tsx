import type { FactsOf } from '@/lib/mail/rules/content';
import { JobPage, Next, Para, Title } from './frame';
import type { Setting, Writer } from './letter';
import { fullDay, money } from './words';

export const parcelAwaited: Writer<'parcel-awaited'> = ({ isNamed, keptUntil, closure }, setting) => {
  const until = fullDay(keptUntil, setting);
  const isClaim = setting.job.kind === 'claim';
  const what = isClaim ? 'claim' : 'booking';
  return {
    to: 'customer',
    subject: `Your parcel is not here yet: job ${setting.job.number}`,
    summary: `We keep your ${what} open until ${until}.`,
    body: (
      <>
        <Title>We still wait for your parcel</Title>
        <Para>
          {isNamed
            ? 'You told us the number of your parcel, and it has not reached us. It should be here by now.'
            : `Your ${what} is open, and your unit has not reached us.`}
        </Para>
        {closure ? <Para>{closedSentence(closure, setting)}</Para> : null}
        <JobPage setting={setting}>Open the job page</JobPage>
        <Next
          what={
            isNamed
              ? 'Please ask your carrier where the parcel is; keep the receipt for that. Is the number wrong? Change it on the job page. If you learn that it is lost, write to us there.'
              : 'Post the unit with the packing slip from the job page. If you do not want to send it any more, cancel there. If you have posted it, give us the number of the parcel there.'
          }
          when={`We keep your ${what} open until ${until}. After that day we may cancel it, and tell you.${isClaim ? ' It counts from the day it was opened; a new claim counts from the day that one is opened.' : ''}${isNamed ? '' : ` If you give us the number of your parcel, we keep your ${what} open for longer, and write once more if that parcel does not come.`}`}
          costs={`Waiting and cancelling are free of charge (${money(0, setting)}).`}
        />
      </>
    ),
  };
};

type Closure = NonNullable<FactsOf<'parcel-awaited'>['closure']>;

/** As the job page says it, which this letter leads to. */
function closedSentence({ from, to, backOn }: Closure, setting: Setting): string {
  const days =
    from === to
      ? `On ${fullDay(from, setting)}`
      : `From ${fullDay(from, setting)} to ${fullDay(to, setting)}`;
  return `${days} nobody is here. A parcel that comes then is taken in on ${fullDay(backOn, setting)}.`;
}
