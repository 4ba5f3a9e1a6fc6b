import { Facts } from '@/app/ui/docket/facts';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { customsData } from '@/lib/jobs/customs-data';
import { showNumber } from '@/lib/numbers/job-number';
import { familyName } from '@/lib/parcels/records';
import { needsCustomsNote } from '@/lib/parcels/rules/customs';
import { CUSTOMS_CAUTION, CUSTOMS_FORMS } from '@/lib/parcels/rules/customs-note';
import { numberedTitle } from '../../../numbered-title';
import { openSheet } from '../open-sheet';

export const generateMetadata = numberedTitle('Customs note');

export default async function CustomsPage({ params }: { params: Promise<{ number: string }> }) {
  const { number } = await params;
  const { job, workshop } = await openSheet(number);
  const { note } = customsData(job, { workshop, family: await familyName(job.model.familyId) });
  const isNeeded = needsCustomsNote({
    from: workshop.country,
    to: job.customer.country,
    free: workshop.customsFree,
  });
  return (
    <>
      <PageHead
        above={
          <TextLink href={`/workshop/jobs/${job.number}#moves`}>{`Job ${showNumber(job.number)}`}</TextLink>
        }
        title="Customs note"
        lead="What a customs form asks about this parcel, in the order of the forms."
      >
        <LinkButton href={`/workshop/jobs/${job.number}/customs.pdf`} kind="second" file>
          Customs note (PDF)
        </LinkButton>
      </PageHead>
      {isNeeded ? null : (
        <Notice kind="note" heading="Not needed for this parcel">
          <p>It stays in the workshop’s own country, or goes to one without customs between the two.</p>
        </Notice>
      )}
      {note.missing.length === 0 ? null : (
        <Notice kind="warn" heading="Not said yet">
          <ul className="plain-list">
            {note.missing.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </Notice>
      )}
      {note.fields.map((field) => (
        <section key={field.heading}>
          <h2>{field.heading}</h2>
          <Facts items={field.entries.map(({ name, value }) => ({ term: name, text: value }))} />
        </section>
      ))}
      <section>
        <h2>Which form</h2>
        <p>{CUSTOMS_FORMS}</p>
        <p>
          <strong>{CUSTOMS_CAUTION}</strong>
        </p>
      </section>
    </>
  );
}
