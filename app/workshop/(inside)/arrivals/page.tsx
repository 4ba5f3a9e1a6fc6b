import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { cache } from 'react';
import { readWorkshop } from '@/app/read-workshop';
import { Slip, SlipList } from '@/app/ui/docket/slip';
import { errorTitle } from '@/app/ui/forms/error-title';
import { LinkButton } from '@/app/ui/page/button';
import { EmptyState } from '@/app/ui/page/empty-state';
import { Notice } from '@/app/ui/page/notice';
import { NumberForm } from '@/app/ui/page/number-form';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { NumberLink } from '@/app/workshop/number-link';
import { now } from '@/lib/clock';
import { labelsPerSheet } from '@/lib/documents/bag-label';
import {
  type ArrivalFinding,
  type ArrivalJob,
  byComing,
  type ExpectedParcel,
  expectedParcels,
  type FoundCertificate,
  findArrival,
} from '@/lib/jobs/find-arrival';
import { labelsOfArrived } from '@/lib/jobs/label-data';
import { moveOf, STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { explainReading, showNumber } from '@/lib/numbers/job-number';
import { nearSerials } from '@/lib/warranty/near-serials';
import { NearList } from '../../near-list';
import { requireStaff } from '../../who';
import { ParcelsNotCome, PostedTag, waitFacts } from '../awaited-parcels';
import { LabelPlaces } from './label-places';
import { arrivalHref, OpenedNotice } from './opened-notice';
import { type OpenedParcel, readOpened } from './read-opened';

type Props = { searchParams: Promise<{ q?: string | string[]; opened?: string | string[] }> };

const expectedOnce = cache(() => expectedParcels(now()));
const findOnce = cache(async (typed: string) => findArrival(typed, await expectedOnce()));

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  await requireStaff('take-in');
  const finding = await findOnce(String((await searchParams).q ?? ''));
  return { title: errorTitle('Arrivals', problemOf(finding) !== null) };
}

/** Most bookings a page lists; the field above finds the others. */
const MOST_LISTED = 40;

export default async function ArrivalsPage({ searchParams }: Props) {
  await requireStaff('take-in');
  const { q, opened: of } = await searchParams;
  const typed = String(q ?? '');
  const opened = await readOpened(of);
  const { coming, notCome } = byComing(await expectedOnce());
  const [finding, { locale, timeZone }, labels] = await Promise.all([
    findOnce(typed),
    readWorkshop(),
    labelsOfArrived(),
  ]);
  if (finding.state === 'found') redirect(arrivalHref(finding.job.number, opened));
  const isUnknown = finding.state === 'none' || finding.state === 'wrong-character';
  const near = isUnknown ? await nearSerials(typed, { timeZone }) : null;
  return (
    <>
      <PageHead title="Arrivals" lead="Scan or type what stands on the parcel, the slip or the unit." />
      {opened ? <OpenedNotice opened={opened} /> : null}
      <NumberForm
        action="/workshop/arrivals"
        name="q"
        label="Number, serial or carrier reference"
        hint="A scanner types and presses Enter by itself. The code on a packing slip or a certificate works too."
        value={typed}
        problem={problemOf(finding)}
        submit="Find the booking"
        autoFocus
        scan
        hidden={opened ? { opened: opened.number } : undefined}
      />
      <Answer finding={finding} locale={locale} opened={opened} />
      {opened ? null : (
        <p>
          <LinkButton href="/workshop/arrivals/new" kind="second">
            A parcel without a booking
          </LinkButton>
        </p>
      )}
      {near ? <NearList near={near} locale={locale} /> : null}
      <section aria-labelledby="expected">
        <h2 id="expected">{`Expected parcels (${coming.length})`}</h2>
        {coming.length === 0 ? (
          <EmptyState>No parcel is expected. Bookings appear here until they are taken in.</EmptyState>
        ) : (
          <ParcelList
            label="Expected parcels"
            jobs={coming.slice(0, MOST_LISTED)}
            locale={locale}
            opened={opened}
          />
        )}
        {coming.length > MOST_LISTED ? (
          <p>
            <TextLink href="/workshop/jobs?stage=booked">{`All ${coming.length} bookings`}</TextLink>
          </p>
        ) : null}
      </section>
      <ParcelsNotCome parcels={notCome} locale={locale} />
      {labels.length === 0 ? null : (
        <section aria-labelledby="labels">
          <h2 id="labels">{`Labels of what waits to be assessed (${labels.length})`}</h2>
          <LabelPlaces
            action="/workshop/arrivals/labels.pdf"
            labelsPerSheet={labelsPerSheet}
            mayRepeat={false}
          />
        </section>
      )}
    </>
  );
}

function problemOf(finding: ArrivalFinding): string | null {
  if (finding.state === 'wrong-character') {
    return finding.what === 'reference'
      ? 'One character looks wrong. Compare the carrier’s reference with the label, one character at a time.'
      : explainReading(finding.what);
  }
  if (finding.state !== 'none') return null;
  return finding.isNumber
    ? 'The number is spelt right, but no job carries it. Is the slip from another workshop?'
    : 'No booking fits. Try the job number on the slip, or the serial on the unit.';
}

function Answer(props: { finding: ArrivalFinding; locale: string; opened: OpenedParcel | null }) {
  const { finding, locale, opened } = props;
  switch (finding.state) {
    case 'choose':
      return (
        <section aria-labelledby="fits">
          <h2 id="fits">
            {finding.by === 'near-serial' ? 'No booking has this very serial' : 'More than one booking fits'}
          </h2>
          <p>
            {finding.by === 'near-serial'
              ? 'These are close to it. Characters like O and 0 are easily mixed up: compare with the unit before you choose.'
              : 'Compare the name and the date of the booking with what is in the parcel.'}
          </p>
          <ParcelList label="Bookings that fit" jobs={finding.jobs} locale={locale} opened={opened} />
        </section>
      );
    case 'here-already':
      return (
        <Notice kind="note" heading="Not expected any more">
          {finding.jobs.map((job) => (
            <p key={job.number}>
              <NumberLink of="jobs" number={job.number} />
              {`, ${job.unit}, is at the stage “${STAGE_WORDS[job.stage].label}”.`}
            </p>
          ))}
          <ClaimLinks certificates={finding.certificates} />
        </Notice>
      );
    case 'went-back':
      return (
        <Notice kind="note" heading="This unit was sent back already">
          {finding.jobs.map((job) => (
            <p key={job.number}>
              <NumberLink of="jobs" number={job.number} />
              {`, ${job.unit}. Is it the parcel we sent, brought back undelivered? Open its sheet and say “${moveOf('came-back').label}”. If the customer sent it for a fault, it needs a claim.`}
            </p>
          ))}
          <ClaimLinks certificates={finding.certificates} />
        </Notice>
      );
    case 'certificate-only':
      return (
        <Notice kind="note" heading="A certificate without an open claim">
          <p>No booking and no open claim fits, and the unit has a certificate. Did it come for a fault?</p>
          <ClaimLinks certificates={finding.certificates} />
        </Notice>
      );
    default:
      return null;
  }
}

/** The way in for a unit that came back without a claim, one for each certificate in force. */
function ClaimLinks({ certificates }: { certificates: readonly FoundCertificate[] }) {
  return certificates.map(({ number, jobNumber }) => (
    <p key={number} className="flex flex-wrap items-center gap-x-4 gap-y-2">
      <LinkButton href={`/workshop/claims/new?certificate=${number}`} kind="second">
        Open a claim on <NumberText text={showNumber(number)} /> and take it in
      </LinkButton>
      <TextLink href={`/workshop/jobs/${jobNumber}`}>The job behind it</TextLink>
    </p>
  ));
}

function ParcelList(props: {
  label: string;
  jobs: readonly (ArrivalJob & Partial<ExpectedParcel>)[];
  locale: string;
  opened: OpenedParcel | null;
}) {
  return (
    <SlipList label={props.label}>
      {props.jobs.map((job) => (
        <Slip
          key={job.number}
          href={arrivalHref(job.number, props.opened)}
          kind={job.kind === 'claim' ? 'Claim job' : 'Job'}
          number={showNumber(job.number)}
          title={`${job.unit}: ${job.repair}`}
          tag={<PostedTag job={job} />}
          facts={[
            job.customer,
            <span key="serial">
              serial <NumberText text={job.serial} />
            </span>,
            ...waitFacts(job, props.locale),
            ...(job.reference === ''
              ? []
              : [
                  <span key="reference">
                    reference <NumberText text={job.reference} />
                  </span>,
                ]),
          ]}
        />
      ))}
    </SlipList>
  );
}
