import type { Metadata } from 'next';
import { ActionForm } from '@/app/ui/forms/action-form';
import { FileField } from '@/app/ui/forms/file-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { MOST_ROWS } from '@/lib/catalogue/import-file';
import { FILE_WORDS } from '@/lib/catalogue/rules/file-look';
import { MOST_MEGABYTES } from '@/lib/catalogue/uploaded-list';
import { requireStaff } from '../../../who';
import { SavedNote } from '../saved-note';
import { uploadListAction } from './actions';
import { importedCounts } from './schema';

export const metadata: Metadata = { title: 'The catalogue as files' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function CatalogueFilePage({ searchParams }: Props) {
  await requireStaff('catalogue');
  const imported = importedCounts.safeParse(await searchParams);
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/catalogue">Catalogue</TextLink>}
        title="The catalogue as files"
        lead="Families, models, repairs and prices, their check sheets, and the warranty policies: three tables for a spreadsheet."
      />
      <SavedNote saved={imported.success ? 'yes' : undefined}>
        {imported.success
          ? `The file of ${FILE_WORDS[imported.data.file]} is imported: ${imported.data.added} added, ${imported.data.changed} changed.`
          : ''}
      </SavedNote>
      <section aria-labelledby="out">
        <h2 id="out" className="mb-2">
          Take them out
        </h2>
        <p className="mb-4 max-w-text">CSV files in UTF-8.</p>
        <ul className="flex max-w-text flex-col gap-4">
          <li>
            <LinkButton href="/workshop/catalogue/file/catalogue.csv" kind="second" file>
              Download the catalogue (CSV)
            </LinkButton>
            <p className="mt-1">One row for each repair. A model without repairs has a row too.</p>
          </li>
          <li>
            <LinkButton href="/workshop/catalogue/file/checks.csv" kind="second" file>
              Download the check sheets (CSV)
            </LinkButton>
            <p className="mt-1">One row for each check, of the newest sheet of every repair.</p>
          </li>
          <li>
            <LinkButton href="/workshop/catalogue/file/policies.csv" kind="second" file>
              Download the policies (CSV)
            </LinkButton>
            <p className="mt-1">One row for each, with its newest terms.</p>
          </li>
        </ul>
      </section>
      <section aria-labelledby="in" className="mt-12 max-w-text">
        <h2 id="in" className="mb-2">
          Bring one in
        </h2>
        <ul className="mb-4 list-disc pl-5">
          <li>
            Use a downloaded file as the pattern: the headings stay as they are, in any order. They tell which
            of the three it is. A new policy comes in before the repairs that have it, and repairs before
            their checks.
          </li>
          <li>
            Addresses find what is here already, and so does the name of a policy. In the catalogue leave an
            address empty for something new. What belongs to a model is the same in each of its rows.
          </li>
          <li>
            Entries of a list are separated by semicolons; a part is its code, with x2 behind it for two
            pieces.
          </li>
          <li>
            What the file does not name stays as it is, and nothing is ever deleted. But the rows of a repair
            in the file of checks are its whole sheet: a check without a row is taken off.
          </li>
          <li>
            An empty cell empties what it stands for: a repair without parts in its row has no usual parts.
          </li>
          <li>
            A changed sheet or policy is a new version. Units that are here and certificates that are out keep
            theirs.
          </li>
        </ul>
        <ActionForm action={uploadListAction} label="Bring a file in">
          <FileField
            name="file"
            label="File"
            hint={`Commas or semicolons, up to ${MOST_ROWS.toLocaleString('en-GB')} rows.`}
            most={1}
            maxMegabytes={MOST_MEGABYTES}
            accept=".csv,text/csv"
            kinds="CSV in UTF-8"
          />
          <SubmitButton
            label="Look at what it would do"
            busy="Reading…"
            consequence="Nothing is changed yet. Next: what would be added and changed, and every fault by row and column."
          />
        </ActionForm>
      </section>
    </>
  );
}
