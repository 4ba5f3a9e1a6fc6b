import { Facts } from '@/app/ui/docket/facts';
import { LinkButton } from '@/app/ui/page/button';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { showNumber } from '@/lib/numbers/job-number';
import { readCoverEnds } from '@/lib/warranty/stored-cover-ends';
import type { PartProps } from './part-props';

export async function CertificatePart({ job, token, workshop }: PartProps) {
  const certificate = job.certificates.at(-1);
  if (!certificate) return null;
  const isReplaced = certificate.supersededAt !== null;
  const stated = dayFromDate(certificate.endsOn);
  const end = (await readCoverEnds([certificate])).get(certificate.id)?.end ?? stated;
  return (
    <section aria-labelledby="certificate">
      <h2 id="certificate">Your certificate</h2>
      <Facts
        items={[
          { term: 'Number', text: <NumberText text={showNumber(certificate.number)} /> },
          { term: 'Revision', text: String(certificate.revision) },
          {
            term: 'Covered until',
            text: `the end of ${formatDay(end, workshop.locale, 'weekday')}`,
          },
          {
            term: 'Given back',
            text:
              end === stated
                ? null
                : `Days while your unit was out of your hands were added, so cover runs on after ${formatDay(stated, workshop.locale, 'weekday')}, which the certificate states.`,
          },
          {
            term: 'Replaced',
            text: isReplaced ? 'A newer revision is in force; the number below leads to it.' : null,
          },
        ]}
      />
      <p>
        <LinkButton href={`/job/${token}/certificate.pdf`} file>
          Certificate (PDF)
        </LinkButton>
      </p>
      <p>
        <TextLink href={`/certificate/${certificate.number}`}>
          Has it failed again? Open a claim from the certificate.
        </TextLink>
      </p>
    </section>
  );
}
