import { Slip, SlipList } from '@/app/ui/docket/slip';
import { LinkButton } from '@/app/ui/page/button';
import { Tag } from '@/app/ui/page/tag';
import { formatDay } from '@/lib/calendar/format';
import type { ArrivalJob, ExpectedParcel } from '@/lib/jobs/find-arrival';
import { showNumber } from '@/lib/numbers/job-number';

export function PostedTag({ job }: { job: ArrivalJob }) {
  const isPosted = job.reference !== '';
  return <Tag tone={isPosted ? 'now' : 'waiting'}>{isPosted ? 'posted' : 'not known to be posted'}</Tag>;
}

/** The days that say how long a parcel has been awaited. */
export function waitFacts(job: ArrivalJob & Partial<ExpectedParcel>, locale: string): string[] {
  const { wait } = job;
  const short = (on: ArrivalJob['bookedOn']) => formatDay(on, locale, 'short');
  return [
    `booked ${short(job.bookedOn)}`,
    ...(wait && job.reference !== '' ? [`number given, awaited since ${short(wait.since)}`] : []),
    ...(wait?.isReminded ? ['customer reminded'] : []),
  ];
}

type Props = { parcels: readonly ExpectedParcel[]; locale: string };

/** Bookings whose parcel does not come: somebody writes once more, or cancels. Nothing is cancelled by itself. */
export function ParcelsNotCome({ parcels, locale }: Props) {
  if (parcels.length === 0) return null;
  return (
    <section aria-labelledby="not-come">
      <h2 id="not-come">{`Parcels that did not come (${parcels.length})`}</h2>
      <p>
        Write to the customer, or cancel on the job sheet. Until then each keeps its customer’s data, and a
        claim lets nobody open another on its certificate.
      </p>
      <SlipList label="Parcels that did not come">
        {parcels.map((job) => (
          <Slip
            key={job.number}
            href={`/workshop/jobs/${job.number}`}
            kind={job.kind === 'claim' ? 'Claim job' : 'Job'}
            number={showNumber(job.number)}
            title={`${job.unit}: ${job.repair}`}
            facts={[
              <PostedTag key="posted" job={job} />,
              `${job.wait.days} days without a parcel`,
              job.customer,
              ...waitFacts(job, locale),
            ]}
            tag={
              <span className="flex flex-wrap gap-2">
                <LinkButton href={`/workshop/jobs/${job.number}#messages`} kind="second">
                  Write
                </LinkButton>
                <LinkButton href={`/workshop/jobs/${job.number}#moves`} kind="second">
                  Cancel
                </LinkButton>
              </span>
            }
          />
        ))}
      </SlipList>
    </section>
  );
}
