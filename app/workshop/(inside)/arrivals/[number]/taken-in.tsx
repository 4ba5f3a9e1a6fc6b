import { Docket } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { NumberForm } from '@/app/ui/page/number-form';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { NumberText } from '@/app/ui/words/number-text';
import { StageTag } from '@/app/ui/words/stage-tag';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay, formatInstant } from '@/lib/calendar/format';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { labelsPerSheet } from '@/lib/documents/bag-label';
import { factsOf } from '@/lib/jobs/facts';
import type { JobRecord } from '@/lib/jobs/records';
import { readStage } from '@/lib/jobs/records';
import { accessoryDifferences } from '@/lib/jobs/rules/arrival';
import { takenInAt } from '@/lib/jobs/rules/of-booking';
import { ifMailed } from '@/lib/mail/mail-server';
import { showNumber } from '@/lib/numbers/job-number';
import type { WorkshopCard } from '@/lib/workshop/card';
import { LabelPlaces } from '../label-places';
import { HistoryPart } from './history-part';

type Props = { job: JobRecord; workshop: WorkshopCard };

/** What came of taking a parcel in: the comparison of the serials above all, what the customer was told, and the next parcel. */
export function TakenIn({ job, workshop }: Props) {
  const { locale, timeZone } = workshop;
  const toldAt = takenInAt(job.events);
  const promise = job.promisedOn ? formatDay(dayFromDate(job.promisedOn), locale, 'weekday') : null;
  const differences = accessoryDifferences(
    job.accessories
      .filter((each) => each.isTold)
      .map((each) => ({ name: each.name, isArrived: each.isArrived === true })),
    job.accessories.filter((each) => !each.isTold).map((each) => each.name),
  );
  return (
    <>
      <PageHead
        above={
          <TextLink href="/workshop/arrivals" className="inline-block py-2.5">
            Arrivals
          </TextLink>
        }
        title={`Taken in: ${unitName(job.model)}`}
        lead={ifMailed(
          `The customer was told${toldAt ? ` on ${formatDay(dayInZone(toldAt, timeZone), locale, 'weekday')}` : ''}.`,
          'The mail to the customer is kept here, because no mail server is set.',
        )}
      />
      <SerialNotice job={job} />
      <Docket
        kind={job.kind === 'claim' ? 'Claim job' : 'Job'}
        number={showNumber(job.number)}
        heading={job.repair.name}
        tag={<StageTag stage={readStage(job.stage)} />}
        stubFacts={[
          {
            term: 'Arrived',
            text: job.arrivedAt ? formatInstant(job.arrivedAt, { locale, zone: timeZone }) : null,
          },
        ]}
      >
        <Facts
          items={[
            { term: 'Promise', text: promise },
            {
              term: 'Differences told',
              text: differences.length === 0 ? 'none: everything was there' : differences.join('. '),
            },
            { term: 'Customer', text: job.customer.name },
          ]}
        />
        <div className="mt-4">
          <PhotoStrip
            label="Photos of its condition"
            photos={job.photos
              .filter(({ purpose }) => purpose === 'arrival' || purpose === 'serial')
              .map((photo, index) => ({
                src: `/workshop/photo/${photo.id}?size=thumb`,
                full: `/workshop/photo/${photo.id}`,
                alt:
                  photo.caption ||
                  (photo.purpose === 'serial' ? 'The serial' : `Condition on arrival, picture ${index + 1}`),
                width: photo.width,
                height: photo.height,
              }))}
          />
        </div>
        <HistoryPart job={job} workshop={workshop} />
        <div className="page-actions mt-4">
          <LinkButton href={`/workshop/jobs/${job.number}`} kind={job.isSerialSettled ? 'main' : 'second'}>
            Open the job sheet
          </LinkButton>
          <LinkButton href={`/workshop/jobs/${job.number}/label.pdf`} kind="second" file>
            Bag label (PDF)
          </LinkButton>
        </div>
        <details className="mt-4">
          <summary>Labels on an A4 sheet</summary>
          <LabelPlaces
            action={`/workshop/jobs/${job.number}/label.pdf`}
            labelsPerSheet={labelsPerSheet}
            mayRepeat
          />
        </details>
      </Docket>
      <section aria-labelledby="next">
        <h2 id="next">The next parcel</h2>
        <NumberForm
          action="/workshop/arrivals"
          name="q"
          label="Number, serial or carrier reference"
          hint="Scan or type it."
          value=""
          problem={null}
          submit="Find the booking"
          autoFocus={job.isSerialSettled}
        />
      </section>
    </>
  );
}

function SerialNotice({ job }: { job: JobRecord }) {
  if (!factsOf(job).isPriceAgreed) {
    return (
      <Notice kind="note" heading="Nothing is agreed with the customer yet">
        <p>
          The parcel came without a booking. Assess the unit, write a price and ask for approval: no repair
          starts before the customer has said yes on their private page.
        </p>
      </Notice>
    );
  }
  if (job.serialComparison === 'same' || job.serialComparison === null) {
    return (
      <Notice kind="good" heading="The serial is the one that was booked">
        <p>Nothing has to be settled.</p>
      </Notice>
    );
  }
  if (job.isSerialSettled) {
    return (
      <Notice kind="good" heading="The serial was settled by a person">
        <p>
          The job goes on under <NumberText text={job.serialTyped} />.
        </p>
      </Notice>
    );
  }
  const isClose = job.serialComparison === 'likely-misread';
  return (
    <Notice
      kind={isClose ? 'warn' : 'stop'}
      heading={isClose ? 'The serial is close, not the same' : 'The serial is another one'}
    >
      <Facts
        items={[
          { term: 'Booked', text: <NumberText text={job.serialTyped} /> },
          { term: 'Read', text: <NumberText text={job.arrivedSerial ?? ''} /> },
          {
            term: 'Comparison',
            text: isClose
              ? 'likely misread: they differ by one character, or only by characters that are easily mixed up'
              : 'different: they differ by more than a slip of the eye explains',
          },
        ]}
      />
      <p>
        {isClose
          ? 'The arrival is kept. Look at the unit once more, with a photo of the serial, and settle which it is.'
          : 'The arrival is kept. This may be another unit than the one booked: look again, ask the customer if need be, and settle which it is. Until then the job cannot be assessed.'}
      </p>
      <p>
        <LinkButton href={`/workshop/jobs/${job.number}#unit`}>Settle the serial</LinkButton>
      </p>
    </Notice>
  );
}
