import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { formatDay } from '@/lib/calendar/format';
import { STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { showNumber } from '@/lib/numbers/job-number';
import type { NearSerials } from '@/lib/warranty/near-serials';

type Props = { near: NearSerials; locale: string; heading?: 'h2' | 'h4' };

/** Jobs and certificates of a serial that may be the same, misread; nothing when there are none. */
export function NearList({ near, locale, heading: Heading = 'h2' }: Props) {
  const { jobs, certificates } = near;
  if (jobs.length === 0 && certificates.length === 0) return null;
  return (
    <section aria-labelledby="near">
      <Heading id="near">Close to this serial</Heading>
      <p>
        Characters like O and 0 are easily mixed up. Compare with the unit before you rely on any of these.
      </p>
      <ul className="grid gap-2">
        {certificates.map((certificate) => (
          <li key={certificate.number}>
            <NumberText text={certificate.serial} />
            {': '}
            <TextLink href={`/workshop/jobs/${certificate.jobNumber}`}>
              Certificate <NumberText text={showNumber(certificate.number)} />
            </TextLink>
            {`, ${certificate.unit}, cover stated until ${formatDay(certificate.endsOn, locale, 'short')}`}
          </li>
        ))}
        {jobs.map((job) => (
          <li key={job.number}>
            <NumberText text={job.serial} />
            {': '}
            <TextLink href={`/workshop/jobs/${job.number}`}>
              Job <NumberText text={showNumber(job.number)} />
            </TextLink>
            {`, ${job.unit}, ${job.repair}, ${job.customer}, booked ${formatDay(job.bookedOn, locale, 'short')}, ${STAGE_WORDS[job.stage].label.toLowerCase()}`}
          </li>
        ))}
      </ul>
    </section>
  );
}
