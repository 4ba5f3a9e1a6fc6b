import { Slip, SlipList } from '@/app/ui/docket/slip';
import { LinkButton } from '@/app/ui/page/button';
import { formatDay } from '@/lib/calendar/format';
import type { SoughtParcel } from '@/lib/jobs/sought-parcels';
import { showNumber } from '@/lib/numbers/job-number';
import { inDays } from '@/lib/warranty/rules/cover-sentences';

/** Parcels on their way back that a carrier is asked for, the longest sought first. */
export function ParcelsSought({ parcels, locale }: { parcels: readonly SoughtParcel[]; locale: string }) {
  if (parcels.length === 0) return null;
  return (
    <section aria-labelledby="sought">
      <h2 id="sought">{`Parcels looked for (${parcels.length})`}</h2>
      <p>Ask the carrier again, and say on the job sheet how it ended. Until then nothing closes the job.</p>
      <SlipList label="Parcels looked for">
        {parcels.map((job) => (
          <Slip
            key={job.number}
            href={`/workshop/jobs/${job.number}`}
            kind={job.kind === 'claim' ? 'Claim job' : 'Job'}
            number={showNumber(job.number)}
            title={job.unit}
            facts={[
              job.customer,
              `${job.carrier}, ${job.reference}`,
              ...(job.sentBackOn ? [`sent ${formatDay(job.sentBackOn, locale, 'short')}`] : []),
              `looked for since ${formatDay(job.since, locale, 'short')}${job.days === 0 ? '' : `, ${inDays(job.days)}`}`,
            ]}
            tag={
              <LinkButton href={`/workshop/jobs/${job.number}#moves`} kind="second">
                Say how it ended
              </LinkButton>
            }
          />
        ))}
      </SlipList>
    </section>
  );
}
