import type { Metadata } from 'next';
import { ActionForm } from '@/app/ui/forms/action-form';
import { FileField } from '@/app/ui/forms/file-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { MOST_ROWS } from '@/lib/catalogue/import-list';
import { MOST_MEGABYTES } from '@/lib/catalogue/uploaded-list';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../who';
import { SavedNote } from '../saved-note';
import { uploadListAction } from './actions';
import { importedCounts } from './schema';

export const metadata: Metadata = { title: 'The catalogue as a file' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function CatalogueFilePage({ searchParams }: Props) {
  await requireStaff(rolesThatMay('catalogue'));
  const imported = importedCounts.safeParse(await searchParams);
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/catalogue">Catalogue</TextLink>}
        title="The catalogue as a file"
        lead="Families, models, repairs, prices and usual parts in one table for a spreadsheet. Check sheets and policies stay here."
      />
      <SavedNote saved={imported.success ? 'yes' : undefined}>
        {imported.success
          ? `The file is imported: ${imported.data.added} added, ${imported.data.changed} changed.`
          : ''}
      </SavedNote>
      <section aria-labelledby="out">
        <h2 id="out" className="mb-2">
          Take it out
        </h2>
        <p className="mb-4 max-w-text">
          A CSV file in UTF-8 with one row for each repair. A model without repairs has a row too.
        </p>
        <LinkButton href="/workshop/catalogue/file/catalogue.csv" kind="second" file>
          Download the catalogue (CSV)
        </LinkButton>
      </section>
      <section aria-labelledby="in" className="mt-12 max-w-text">
        <h2 id="in" className="mb-2">
          Bring it in
        </h2>
        <ul className="mb-4 list-disc pl-5">
          <li>Use a downloaded file as the pattern: the headings stay as they are, in any order.</li>
          <li>
            The three addresses find what is here already. Leave one empty for something new. What belongs to
            a model is the same in each of its rows.
          </li>
          <li>
            Entries of a list are separated by semicolons; a part is its code, with x2 behind it for two
            pieces.
          </li>
          <li>
            What the file does not name stays as it is, and no family, model or repair is ever deleted. An
            empty cell empties what it stands for: a repair without parts in its row has no usual parts.
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
