import type { Metadata } from 'next';
import { lookUpNumber } from '@/app/limit-caller';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Docket } from '@/app/ui/docket/docket';
import { stampSteps } from '@/app/ui/docket/stamp-steps';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { WaitALittle } from '@/app/ui/page/wait-a-little';
import { StageTag } from '@/app/ui/words/stage-tag';
import { formatDay } from '@/lib/calendar/format';
import { readStatus } from '@/lib/jobs/records';
import { BEFORE_READY } from '@/lib/jobs/rules/stage-sets';
import { STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { readNumber, showNumber } from '@/lib/numbers/job-number';

export const metadata: Metadata = { title: 'Where is my repair', robots: { index: false } };

/** Nothing was cancelled: whoever has this number has that of the booking too. */
const OF_BOOKING = 'This unit goes on under the number of its booking. Look that one up instead.';

type Props = { params: Promise<{ number: string }> };

/** The stage of a job for whoever has its number: nothing here says whose it is or what it is. */
export default async function StatusPage({ params }: Props) {
  const { number } = await params;
  const reading = readNumber(number);
  if (!reading.ok || reading.kind !== 'J') nothingHere();
  const sought = await lookUpNumber(reading.number, () => readStatus(reading.number));
  if (!sought.allowed) return <WaitALittle seconds={sought.waitSeconds} />;
  const status = sought.found;
  if (!status) nothingHere();
  const { locale, timeZone } = await readWorkshop();
  const words = STAGE_WORDS[status.stage];
  // While the customer is asked it would be a wrong one: the days of their answer are not counted in it yet.
  const promisedOn = BEFORE_READY.includes(status.stage) ? status.promisedOn : null;
  return (
    <>
      <PageHead
        title="Where your repair is"
        lead={status.isOfBooking ? OF_BOOKING : words.customer}
        next="open the private link in our e-mail to see findings, prices and messages, and to answer us."
      />
      <Docket
        kind="Job"
        number={showNumber(status.number)}
        heading="Stage by stage"
        tag={status.isOfBooking ? null : <StageTag stage={status.stage} />}
        stamps={stampSteps(status, { locale, timeZone })}
      >
        <p>
          {promisedOn
            ? `Promised to be ready by ${formatDay(promisedOn, locale, 'weekday')}.`
            : 'The number alone shows the stages and their days, and not whose unit it is.'}
        </p>
      </Docket>
      <p>
        Lost the e-mail? <TextLink href="/certificate/lost">We send you your private link again.</TextLink>
      </p>
    </>
  );
}
