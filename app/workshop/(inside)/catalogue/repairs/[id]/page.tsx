import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { Money } from '@/app/ui/words/money';
import { priceHistory } from '@/lib/catalogue/price-history';
import { priceKind } from '@/lib/catalogue/rules/price';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { listChoices, readRepair } from '@/lib/catalogue/staff-records';
import { partCodes, usualPartsOf } from '@/lib/catalogue/usual-parts';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../../who';
import { saveRepairAction } from '../../actions';
import { SavedNote } from '../../saved-note';
import { RepairFields } from '../repair-fields';
import { PriceHistoryTable } from './price-history-table';
import { CheckList } from './sheet/check-list';
import { UsualParts } from './usual-parts';

const readOnce = cache(readRepair);

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ saved?: string }> };
type Repair = NonNullable<Awaited<ReturnType<typeof readRepair>>>;

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff();
  const found = await readOnce((await params).id);
  return { title: found ? `${found.name}, ${found.model.name}` : 'Not found' };
}

export default async function RepairPage({ params, searchParams }: Props) {
  const staff = await requireStaff();
  const { id } = await params;
  const { saved } = await searchParams;
  const [repair, workshop, { policies }, prices, parts, codes] = await Promise.all([
    readOnce(id),
    readWorkshop(),
    listChoices(id),
    priceHistory(id),
    usualPartsOf(id),
    partCodes(),
  ]);
  if (!repair) nothingHere();
  const mayChange = may(staff.role, 'catalogue');
  const { model } = repair;
  const sheet = repair.sheets[0];
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href="/workshop/catalogue">Catalogue</TextLink> /{' '}
            <TextLink href={`/workshop/catalogue/models/${model.id}`}>{unitName(model)}</TextLink>
          </>
        }
        title={repair.name}
        lead={repair.isListed ? undefined : 'Not on the price list: nobody can book it.'}
      >
        <LinkButton href={`/workshop/catalogue/repairs/${id}/sheet`} kind="second">
          Check sheet
        </LinkButton>
        {repair.isListed ? (
          <LinkButton href={`/prices/${model.slug}#${repair.slug}`} kind="quiet">
            As customers see it
          </LinkButton>
        ) : null}
      </PageHead>
      {saved === 'new' ? (
        <div className="mb-6">
          <Notice kind="good" role="status">
            <p>
              {'Added. Next: what proves it. Its '}
              <TextLink href={`/workshop/catalogue/repairs/${id}/sheet`}>check sheet</TextLink>
              {' has a first check for now, and certificates print what is on it.'}
            </p>
          </Notice>
        </div>
      ) : (
        <SavedNote saved={saved} />
      )}
      <div className="grid gap-x-12 gap-y-10 lg:grid-cols-[3fr_2fr]">
        {mayChange ? (
          <ActionForm
            action={saveRepairAction.bind(null, model.id, id)}
            hidden={{ mark: repair.mark, priceKind: priceKind(workshop) }}
            label={`Change ${repair.name}`}
          >
            <RepairFields known={repair} policies={policies} workshop={workshop} />
            <SubmitButton
              label="Save the repair"
              busy="Saving…"
              consequence="Counts for bookings from now on. Booked jobs keep the price they agreed to."
            />
          </ActionForm>
        ) : (
          <RepairFacts repair={repair} currency={workshop.currency} locale={workshop.locale} />
        )}
        <div className="grid content-start gap-10">
          <section aria-labelledby="parts">
            <h2 id="parts" className="mb-2">
              Parts usually needed
            </h2>
            <UsualParts
              repairId={id}
              parts={parts}
              codes={codes.map((part) => part.code)}
              mayChange={mayChange}
            />
          </section>
          <section aria-labelledby="prices">
            <h2 id="prices" className="mb-2">
              Prices
            </h2>
            <PriceHistoryTable prices={prices} workshop={workshop} />
          </section>
          <section aria-labelledby="sheet">
            <h2 id="sheet" className="mb-2">
              {sheet ? `Check sheet, version ${sheet.version}` : 'Check sheet'}
            </h2>
            <CheckList checks={sheet?.checks ?? []} />
          </section>
        </div>
      </div>
    </>
  );
}

function RepairFacts({ repair, currency, locale }: { repair: Repair; currency: string; locale: string }) {
  return (
    <Facts
      items={[
        { term: 'In a sentence', text: repair.summary },
        { term: 'Price', text: <Money minor={repair.priceMinor} currency={currency} locale={locale} /> },
        { term: 'Bench minutes', text: repair.minutes },
        { term: 'Stated days', text: repair.workingDays },
        { term: 'Symptoms', text: repair.symptoms.join('. ') },
        { term: 'Policy', text: repair.policy.name },
      ]}
    />
  );
}
