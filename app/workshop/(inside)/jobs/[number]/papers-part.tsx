import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { slipOfJob } from '@/lib/jobs/stored-recall';
import { showNumber } from '@/lib/numbers/job-number';
import type { SheetProps } from './open-sheet';

export async function PapersPart({ job, workshop }: SheetProps) {
  const slip = await slipOfJob(job);
  return (
    <section id="papers" aria-labelledby="papers-head">
      <h2 id="papers-head">Papers</h2>
      <ul className="plain-list">
        <li>
          <TextLink href={`/workshop/jobs/${job.number}/label.pdf`} file>
            Bag label (PDF)
          </TextLink>
        </li>
        {slip.isOffered ? (
          <li>
            <TextLink href={`/workshop/jobs/${job.number}/slip.pdf`} file>
              Packing slip (PDF)
            </TextLink>
          </li>
        ) : null}
        {job.quotes.length > 0 ? (
          <li>
            <TextLink href={`/workshop/jobs/${job.number}/quote.pdf`} file>
              Newest price (PDF)
            </TextLink>
          </li>
        ) : null}
        {job.termsAcceptedAt ? (
          <li>
            <AgreedTerms
              id={job.termsId}
              on={formatDay(dayInZone(job.termsAcceptedAt, workshop.timeZone), workshop.locale, 'short')}
            />
          </li>
        ) : null}
        {job.certificates.map((certificate) => (
          <li key={certificate.id}>
            <TextLink href={`/workshop/certificate/${certificate.id}`} file>
              {`Certificate ${showNumber(certificate.number)}, revision ${certificate.revision} (PDF)`}
            </TextLink>
            {certificate.supersededAt ? ', replaced since' : ''}
          </li>
        ))}
      </ul>
      {!slip.isOffered && slip.stop ? (
        <Notice kind="stop" heading="No packing slip: this unit must not be posted">
          {slip.stop.reasons.map((reason) => (
            <p key={reason}>{reason}</p>
          ))}
        </Notice>
      ) : null}
    </section>
  );
}

/** Contracts made before texts were kept, and those of a workshop that had published none, lead nowhere. */
function AgreedTerms({ id, on }: { id: string | null; on: string }) {
  if (id === null) return `Terms agreed to on ${on}; their text was not kept`;
  return <TextLink href={`/terms/${id}`}>{`Terms as agreed to on ${on}`}</TextLink>;
}
