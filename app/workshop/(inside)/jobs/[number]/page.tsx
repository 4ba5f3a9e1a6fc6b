import type { Metadata } from 'next';
import { Docket, DocketSection } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { stampSteps } from '@/app/ui/docket/stamp-steps';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { StageTag } from '@/app/ui/words/stage-tag';
import { plannedMinutes } from '@/lib/bench/rules/job-sheets';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { now } from '@/lib/clock';
import { config } from '@/lib/config';
import { readMessages } from '@/lib/jobs/read-messages';
import { type JobRecord, readKind, readStage, stagesReached } from '@/lib/jobs/records';
import { dataWords, HISTORY } from '@/lib/jobs/rules/booking';
import { isCollected } from '@/lib/jobs/rules/handover';
import { CERTIFICATE_TO_COME } from '@/lib/jobs/rules/stage-sets';
import { noteSeen } from '@/lib/keeping/seen';
import { showNumber, showTyped } from '@/lib/numbers/job-number';
import { readCarrierRows } from '@/lib/parcels/records';
import { BATTERY_ANSWERS } from '@/lib/parcels/rules/battery-answers';
import { trackingAddress } from '@/lib/parcels/rules/carriers';
import { countryAbroad } from '@/lib/parcels/rules/country-abroad';
import { may } from '@/lib/people/rules/roles';
import { quoteAskedFor } from '@/lib/quotes/records';
import { postalLines } from '@/lib/workshop/rules/letterhead';
import { MissingNotice } from '../../missing-notice';
import { BenchPart } from './bench-part';
import { FindingsPart } from './findings-part';
import { HistoryPart } from './history-part';
import { KeepTyped } from './keep-typed';
import { MailTroublePart } from './mail-trouble-part';
import { MessagesPart } from './messages-part';
import { MoneyPart } from './money-part';
import { MovesPart } from './moves-part';
import { openSheet } from './open-sheet';
import { PapersPart } from './papers-part';
import { PhotosPart } from './photos-part';
import { SerialPart } from './serial-part';
import { TakenBackPart } from './taken-back-part';

type Props = { params: Promise<{ number: string }>; searchParams: Promise<{ saved?: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Job ${showTyped((await params).number)}` };
}

export default async function JobSheetPage({ params, searchParams }: Props) {
  const { number } = await params;
  const { saved } = await searchParams;
  const { job, workshop, staff, who } = await openSheet(number);
  const { locale, timeZone } = workshop;
  const stage = readStage(job.stage);
  const kind = readKind(job.kind);
  const parts = { job, workshop, staff };
  const tracking = trackingAddress(job.carrier, job.carrierReference, await readCarrierRows());
  await noteOpened({ job, userId: who.id });
  return (
    <>
      <PageHead
        title={`${unitName(job.model)}: ${job.repair.name}`}
        lead={
          kind === 'claim'
            ? 'Claim job: free of charge for the customer as far as the ruling covers it.'
            : forWhom(job, locale)
        }
      >
        {job.claim ? (
          <TextLink href={`/workshop/claims/${job.claim.number}`}>
            {`Claim ${showNumber(job.claim.number)}: first repair and returned unit side by side`}
          </TextLink>
        ) : null}
      </PageHead>
      <KeepTyped job={job.number} version={job.version} isSaved={saved !== undefined} />
      {saved ? (
        <Notice kind="good" role="status">
          <p>Saved.</p>
        </Notice>
      ) : null}
      <MailTroublePart {...parts} role={who.role} />
      {CERTIFICATE_TO_COME.includes(stage) ? (
        <MissingNotice workshop={workshop} mayFillIn={may(who.role, 'settings')} stopped="certificate" />
      ) : null}
      <Docket
        kind={kind === 'claim' ? 'Claim job' : 'Job'}
        number={showNumber(job.number)}
        heading={job.repair.name}
        tag={<StageTag stage={stage} />}
        qr={{
          text: `${config.appUrl}/workshop/jobs/${job.number}`,
          alt: 'QR code that opens this job sheet',
        }}
        stubFacts={[
          { term: 'Booked', text: formatDay(dayInZone(job.bookedAt, timeZone), locale, 'short') },
          {
            term: 'Promise',
            text: job.promisedOn ? formatDay(dayFromDate(job.promisedOn), locale, 'short') : 'none yet',
          },
          { term: 'Bench time', text: `${plannedMinutes(job)} min planned` },
        ]}
        stamps={stampSteps({ stage, reached: stagesReached(job.events) }, { locale, timeZone })}
      >
        <DocketSection heading="Next">
          <MovesPart {...parts} who={who} />
        </DocketSection>
        <DocketSection heading="Unit">
          <div id="unit">
            <Facts
              items={[
                { term: 'Serial booked', text: <NumberText text={job.serialTyped} /> },
                {
                  term: 'Serial read',
                  text: job.arrivedSerial ? <NumberText text={job.arrivedSerial} /> : null,
                },
                { term: 'Problem', text: <span className="written">{job.problem}</span> },
                { term: 'From', text: await quoteLink(job.id) },
                {
                  term: 'History told',
                  text: job.history
                    .map((key) => (key in HISTORY ? HISTORY[key as keyof typeof HISTORY] : key))
                    .join('. '),
                },
                {
                  term: 'Battery',
                  text: BATTERY_ANSWERS.find(
                    (answer) => answer.value === job.batteryAnswer && job.model.battery !== 'none',
                  )?.label,
                },
                {
                  term: 'Recordings',
                  text: dataWords(job.dataAnswer),
                },
                { term: 'In the parcel', text: job.accessories.map(accessoryWords).join(', ') },
              ]}
            />
            <SerialPart {...parts} />
          </div>
        </DocketSection>
        <DocketSection heading="Customer">
          <Facts
            items={[
              { term: 'Name', text: job.customer.name },
              {
                term: 'E-mail',
                text:
                  job.customer.email === '' ? null : (
                    <a href={`mailto:${job.customer.email}`}>{job.customer.email}</a>
                  ),
              },
              { term: 'Telephone', text: job.customer.phone },
              {
                term: 'Address',
                text: postalLines(job.customer, countryAbroad(job.customer.country, workshop)).join(', '),
              },
              { term: 'Parcel to us', text: job.inboundReference },
              {
                term: 'Parcel back',
                text: isCollected(job.events)
                  ? 'Collected by the customer'
                  : [job.carrier, job.carrierReference].filter((text) => text !== '').join(' '),
              },
              {
                term: 'Where it is',
                text: tracking && <a href={tracking}>{`The page of ${job.carrier}`}</a>,
              },
            ]}
          />
          {job.customer.erasedAt ? null : (
            <p>
              <TextLink href={`/workshop/customers/${job.number}`}>Everything of this customer</TextLink>
              {' · '}
              <TextLink href={`/workshop/customers/${job.number}/contact`}>Correct the contact</TextLink>
            </p>
          )}
        </DocketSection>
      </Docket>
      <div className="sheet-parts">
        <div>
          <FindingsPart {...parts} who={who} />
          <BenchPart {...parts} who={who} />
          <PhotosPart {...parts} />
          <TakenBackPart {...parts} who={who} />
        </div>
        <div>
          <MoneyPart {...parts} who={who} />
          <PapersPart {...parts} />
          <MessagesPart {...parts} />
          <HistoryPart {...parts} />
        </div>
      </div>
    </>
  );
}

/** Who opens a sheet has seen whose unit it is, and has read what the customer wrote. */
async function noteOpened({ job, userId }: { job: JobRecord; userId: string }): Promise<void> {
  const at = now();
  await readMessages({ about: { jobId: job.id }, reader: 'staff', now: at });
  if (job.customer.erasedAt) return;
  await noteSeen({ userId, what: 'opened', email: job.customer.email, jobId: job.id, now: at });
}

/** The quote that was asked for before the booking, with the photos and messages that led to it. */
async function quoteLink(jobId: string) {
  const quote = await quoteAskedFor(jobId);
  return quote ? (
    <TextLink href={`/workshop/quotes/${quote.number}`}>{`Quote ${showNumber(quote.number)}`}</TextLink>
  ) : null;
}

function accessoryWords(each: { name: string; isTold: boolean; isArrived: boolean | null }): string {
  if (each.isArrived === null) return `${each.name} (told)`;
  if (!each.isTold) return `${each.name} (came without being told)`;
  return each.isArrived ? `${each.name} (here)` : `${each.name} (missing)`;
}

/** Whose unit it is and by when, in one line; what is wrong with it stands under Unit, once and with its lines. */
function forWhom(job: JobRecord, locale: string): string {
  const promise = job.promisedOn
    ? `Promised for ${formatDay(dayFromDate(job.promisedOn), locale, 'weekday')}.`
    : 'No day is promised yet.';
  return job.customer.name === '' ? promise : `For ${job.customer.name}. ${promise}`;
}
