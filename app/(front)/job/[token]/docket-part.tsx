import { Docket } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { stampSteps } from '@/app/ui/docket/stamp-steps';
import { TextLink } from '@/app/ui/page/text-link';
import { MailAddress } from '@/app/ui/words/mail-address';
import { NumberText } from '@/app/ui/words/number-text';
import { StageTag } from '@/app/ui/words/stage-tag';
import { day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { now } from '@/lib/clock';
import { config } from '@/lib/config';
import { newestQuoteTokenOf } from '@/lib/jobs/private-link';
import { type JobRecord, readKind, readStage, stagesReached } from '@/lib/jobs/records';
import { historyWords } from '@/lib/jobs/rules/booking';
import { parseEvent } from '@/lib/jobs/rules/events';
import type { JobFacts } from '@/lib/jobs/rules/guards';
import { isPromiseOver, promiseToCome } from '@/lib/jobs/rules/promise-to-come';
import { NO_MORE_NEWS, PROMISE_STAGES } from '@/lib/jobs/rules/stage-sets';
import { showNumber } from '@/lib/numbers/job-number';
import { type Carrier, trackingAddress } from '@/lib/parcels/rules/carriers';
import { countryAbroad } from '@/lib/parcels/rules/country-abroad';
import { keptWords } from '@/lib/promise/rules/promise-words';
import { keptPromises } from '@/lib/promise/stored-kept';
import { quoteAskedFor } from '@/lib/quotes/records';
import { postalLines } from '@/lib/workshop/rules/letterhead';
import { collectedOnOf, isNoFault } from './next-facts';
import type { PartProps } from './part-props';

type DocketProps = PartProps & { facts: JobFacts; carriers: readonly Carrier[] };

/** The job as its docket: number and promise on the stub, what is known of unit and parcel beside it, the stages it was at. */
export async function DocketPart({ job, workshop, facts, carriers }: DocketProps) {
  const { locale, timeZone } = workshop;
  const stage = readStage(job.stage);
  const collectedOn = collectedOnOf(job, timeZone);
  const tracking = trackingAddress(job.carrier, job.carrierReference, carriers);
  return (
    <Docket
      kind={readKind(job.kind) === 'claim' ? 'Claim job' : 'Job'}
      number={showNumber(job.number)}
      heading={unitName(job.model)}
      tag={<StageTag stage={stage} />}
      qr={{ text: `${config.appUrl}/track/${job.number}`, alt: 'QR code that opens the stage of this job' }}
      stubFacts={[
        { term: 'Booked', text: formatDay(dayInZone(job.bookedAt, timeZone), locale, 'short') },
        {
          term: 'Promise',
          text:
            job.promisedOn && !isPromiseOver(facts)
              ? formatDay(dayFromDate(job.promisedOn), locale, 'weekday')
              : promiseToCome({ ...facts, isNoFault: isNoFault(job) }),
        },
      ]}
      stamps={stampSteps({ stage, reached: stagesReached(job.events) }, { locale, timeZone })}
    >
      <Facts
        items={[
          { term: 'Repair', text: job.repair.name },
          { term: 'Agreed in', text: await quoteLink(job.id) },
          {
            term: 'Terms',
            text: job.termsId && job.termsAcceptedAt && (
              <TextLink
                href={`/terms/${job.termsId}`}
              >{`As you agreed to them on ${formatDay(dayInZone(job.termsAcceptedAt, timeZone), locale, 'short')}`}</TextLink>
            ),
          },
          { term: 'Serial', text: <NumberText text={job.serialTyped} /> },
          { term: 'What you told us', text: <span className="written">{job.problem}</span> },
          { term: 'What happened to it', text: historyWords(job.history) },
          { term: 'Promises so far', text: await promisesSoFar({ job, workshop, facts }) },
          { term: 'Promise moved', text: promiseMoved(job, locale) },
          { term: 'Sent along', text: job.accessories.map((each) => accessoryWords(each)).join(', ') },
          {
            term: 'Goes back to',
            text: [
              job.customer.name,
              ...postalLines(job.customer, countryAbroad(job.customer.country, workshop)),
            ].join(', '),
          },
          { term: 'Mail goes to', text: job.customer.email && <MailAddress text={job.customer.email} /> },
          { term: 'Telephone', text: job.customer.phone },
          { term: 'Collected', text: collectedOn && formatDay(collectedOn, locale, 'short') },
          { term: 'Carrier', text: job.carrier },
          {
            term: 'Carrier’s reference',
            text: job.carrierReference === '' ? null : <NumberText text={job.carrierReference} />,
          },
          { term: 'Where it is', text: tracking && <a href={tracking}>{`The page of ${job.carrier}`}</a> },
        ]}
      />
      {NO_MORE_NEWS.includes(stage) ? null : (
        <p>
          Is something of this wrong, or have you moved? Write to us below before the unit is posted back, and
          we put it right.
        </p>
      )}
    </Docket>
  );
}

/** The quote that the price was agreed in, with the photos and messages that led to it. */
async function quoteLink(jobId: string) {
  const quote = await quoteAskedFor(jobId);
  const token = quote && (await newestQuoteTokenOf(quote.id));
  return token ? <TextLink href={`/quote/${token}`}>{`Quote ${showNumber(quote.number)}`}</TextLink> : null;
}

/** The promise as it was moved last, and why. */
function promiseMoved(job: JobRecord, locale: string): string | null {
  // A promise that was made when another parcel was taken in by mistake is none.
  const since = job.events.findLastIndex(({ kind }) => kind === 'arrival-undone');
  const last = job.events.slice(since + 1).findLast(({ kind }) => kind === 'promise-moved');
  const moved = last && parseEvent('promise-moved', last.data);
  if (moved?.kind !== 'promise-moved') return null;
  const { data } = moved;
  const to = formatDay(day(data.to), locale, 'weekday');
  const from = data.from === null ? '' : `, from ${formatDay(day(data.from), locale, 'weekday')}`;
  return `To ${to}${from}. ${data.reason}`;
}

/** How often promises were kept, while one is still to be kept here. */
async function promisesSoFar({ job, workshop, facts }: Omit<DocketProps, 'token' | 'carriers'>) {
  const stage = readStage(job.stage);
  const isAhead = job.promisedOn && PROMISE_STAGES.includes(stage) && !isPromiseOver(facts);
  return isAhead ? keptWords(await keptPromises(now(), workshop)) : null;
}

function accessoryWords(each: { name: string; isTold: boolean; isArrived: boolean | null }): string {
  if (each.isArrived === null) return each.name;
  if (!each.isTold) return `${each.name} (came with it)`;
  return each.isArrived ? `${each.name} (here)` : `${each.name} (was not in the parcel)`;
}
