import type { Metadata } from 'next';
import { ActionForm } from '@/app/ui/forms/action-form';
import { CountField } from '@/app/ui/forms/count-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { listCatalogue } from '@/lib/catalogue/staff-records';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../who';
import { saveFamilyAction } from './actions';
import { SavedNote } from './saved-note';

export const metadata: Metadata = { title: 'Catalogue' };

type Props = { searchParams: Promise<{ saved?: string }> };
type Family = Awaited<ReturnType<typeof listCatalogue>>[number];

export default async function CataloguePage({ searchParams }: Props) {
  const staff = await requireStaff();
  const { saved } = await searchParams;
  const families = await listCatalogue();
  const mayChange = may(staff.role, 'catalogue');
  return (
    <>
      <PageHead title="Catalogue" lead="What we mend, what it costs, what proves it and what we promise.">
        {mayChange ? <LinkButton href="/workshop/catalogue/models/new">Add a model</LinkButton> : null}
        <LinkButton href="/workshop/catalogue/policies" kind="second">
          Policies
        </LinkButton>
        <LinkButton href="/workshop/catalogue/pin-tables" kind="second">
          Pin tables
        </LinkButton>
        {mayChange ? (
          <LinkButton href="/workshop/catalogue/file" kind="second">
            As files
          </LinkButton>
        ) : null}
        <LinkButton href="/prices" kind="quiet">
          The price list as customers see it
        </LinkButton>
      </PageHead>
      <SavedNote saved={saved} />
      {families.length === 0 ? <p className="empty">No family yet. Add one below, then its models.</p> : null}
      {families.map((family) => (
        <FamilySection key={family.id} family={family} mayChange={mayChange} />
      ))}
      {mayChange ? (
        <section aria-labelledby="add" className="mt-12">
          <h2 id="add" className="mb-3">
            Add a family
          </h2>
          <ActionForm action={saveFamilyAction.bind(null, null)} label="Add a family">
            <TextField
              name="name"
              label="Name"
              hint="In the plural, like Field recorders."
              width="half"
              autoComplete="off"
            />
            <CountField
              name="position"
              label="Place on the price list"
              hint="Families stand in the order of this number."
              defaultValue={families.length + 1}
            />
            <SubmitButton
              label="Add the family"
              busy="Adding…"
              consequence="Customers see it once it has a listed repair."
            />
          </ActionForm>
        </section>
      ) : null}
    </>
  );
}

function FamilySection({ family, mayChange }: { family: Family; mayChange: boolean }) {
  return (
    <section aria-labelledby={family.slug} className="mt-10">
      <div className="flex flex-wrap items-baseline justify-between gap-x-6">
        <h2 id={family.slug}>{family.name}</h2>
        {mayChange ? (
          <TextLink
            href={`/workshop/catalogue/families/${family.id}`}
            aria-label={`Change the family ${family.name}`}
          >
            Change
          </TextLink>
        ) : null}
      </div>
      <Table
        caption={`Models of ${family.name}`}
        captionHidden
        rows={family.models}
        rowKey={(model) => model.id}
        empty="No model in this family yet."
        columns={[
          {
            head: 'Model',
            kind: 'rowhead',
            cell: (model) => (
              <TextLink href={`/workshop/catalogue/models/${model.id}`}>{unitName(model)}</TextLink>
            ),
          },
          { head: 'Listed repairs', kind: 'number', cell: (model) => repairCount(model.repairs) },
          { head: 'Battery', cell: (model) => batteryText(model.battery, model.batteryWh) },
          {
            head: 'Price list',
            cell: (model) =>
              model.isListed ? <Tag tone="good">listed</Tag> : <Tag tone="waiting">not listed</Tag>,
          },
        ]}
      />
    </section>
  );
}

function repairCount(repairs: readonly { isListed: boolean }[]): string {
  const listed = repairs.filter((repair) => repair.isListed).length;
  return listed === repairs.length ? String(listed) : `${listed} of ${repairs.length}`;
}

function batteryText(battery: string, wattHours: number | null): string {
  if (battery === 'lithium-ion') return wattHours === null ? 'lithium-ion' : `lithium-ion, ${wattHours} Wh`;
  return battery === 'button-cell' ? 'button cell' : 'none';
}
