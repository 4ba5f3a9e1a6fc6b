import { TextLink } from '@/app/ui/page/text-link';
import { showNumber } from '@/lib/numbers/job-number';
import type { SheetProps } from './open-sheet';

export function PapersPart({ job }: SheetProps) {
  return (
    <section id="papers" aria-labelledby="papers-head">
      <h2 id="papers-head">Papers</h2>
      <ul className="plain-list">
        <li>
          <TextLink href={`/workshop/jobs/${job.number}/label.pdf`} file>
            Bag label (PDF)
          </TextLink>
        </li>
        <li>
          <TextLink href={`/workshop/jobs/${job.number}/slip.pdf`} file>
            Packing slip (PDF)
          </TextLink>
        </li>
        {job.quotes.length > 0 ? (
          <li>
            <TextLink href={`/workshop/jobs/${job.number}/quote.pdf`} file>
              Newest price (PDF)
            </TextLink>
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
    </section>
  );
}
