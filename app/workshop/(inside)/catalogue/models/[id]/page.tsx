import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { Money } from '@/app/ui/words/money';
import { NumberText } from '@/app/ui/words/number-text';
import { sizeWords } from '@/lib/catalogue/rules/size';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { listChoices, readModel } from '@/lib/catalogue/staff-records';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../../who';
import { saveModelAction } from '../../actions';
import { SavedNote } from '../../saved-note';
import { ModelFields } from '../model-fields';

const readOnce = cache(readModel);

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ saved?: string }> };
type Model = NonNullable<Awaited<ReturnType<typeof readModel>>>;

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff();
  const found = await readOnce((await params).id);
  return { title: found ? unitName(found) : 'Not found' };
}

export default async function StaffModelPage({ params, searchParams }: Props) {
  const staff = await requireStaff();
  const { id } = await params;
  const { saved } = await searchParams;
  const [model, workshop, choices] = await Promise.all([readOnce(id), readWorkshop(), listChoices()]);
  if (!model) nothingHere();
  const mayChange = may(staff.role, 'catalogue');
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href="/workshop/catalogue">Catalogue</TextLink> / {model.family.name}
          </>
        }
        title={unitName(model)}
        lead={model.isListed ? undefined : 'Not on the price list: nobody can book it.'}
      >
        {mayChange ? (
          <LinkButton href={`/workshop/catalogue/repairs/new?model=${id}`}>Add a repair</LinkButton>
        ) : null}
        {model.isListed ? (
          <LinkButton href={`/prices/${model.slug}`} kind="quiet">
            As customers see it
          </LinkButton>
        ) : null}
      </PageHead>
      <SavedNote saved={saved} />
      <RepairTable model={model} currency={workshop.currency} locale={workshop.locale} />
      <section aria-labelledby="model" className="mt-12">
        <h2 id="model" className="mb-3">
          The model
        </h2>
        {mayChange ? (
          <ActionForm
            action={saveModelAction.bind(null, id)}
            hidden={{ mark: model.mark }}
            label={`Change ${unitName(model)}`}
          >
            <ModelFields known={model} families={choices.families} />
            <SubmitButton
              label="Save the model"
              busy="Saving…"
              consequence="Counts for bookings from now on."
            />
          </ActionForm>
        ) : (
          <ModelFacts model={model} />
        )}
      </section>
    </>
  );
}

function RepairTable({ model, currency, locale }: { model: Model; currency: string; locale: string }) {
  return (
    <Table
      caption="Repairs"
      rows={model.repairs}
      rowKey={(repair) => repair.id}
      empty="No repair yet. Add one to put this model on the price list."
      columns={[
        {
          head: 'Repair',
          kind: 'rowhead',
          cell: (repair) => (
            <TextLink href={`/workshop/catalogue/repairs/${repair.id}`}>{repair.name}</TextLink>
          ),
        },
        {
          head: 'Price',
          kind: 'number',
          cell: (repair) => <Money minor={repair.priceMinor} currency={currency} locale={locale} />,
        },
        { head: 'Bench minutes', kind: 'number', cell: (repair) => repair.minutes },
        { head: 'Stated days', kind: 'number', cell: (repair) => repair.workingDays },
        { head: 'Policy', cell: (repair) => repair.policy.name },
        {
          head: 'Check sheet',
          cell: (repair) => (
            <TextLink href={`/workshop/catalogue/repairs/${repair.id}/sheet`}>
              {sheetText(repair.sheets[0])}
            </TextLink>
          ),
        },
        {
          head: 'Price list',
          cell: (repair) =>
            repair.isListed ? <Tag tone="good">listed</Tag> : <Tag tone="waiting">not listed</Tag>,
        },
      ]}
    />
  );
}

function sheetText(sheet: Model['repairs'][number]['sheets'][number] | undefined): string {
  if (!sheet) return 'none yet';
  const checks = sheet._count.checks;
  return `version ${sheet.version}, ${checks} ${checks === 1 ? 'check' : 'checks'}`;
}

function ModelFacts({ model }: { model: Model }) {
  return (
    <Facts
      items={[
        { term: 'Other names', text: model.aliases.join(', ') },
        { term: 'Comes with', text: model.accessories.join(', ') },
        { term: 'Serial', text: model.serialExample ? <NumberText text={model.serialExample} /> : null },
        { term: 'Where it stands', text: model.serialPlace },
        { term: 'Size and weight', text: sizeWords(model) },
        { term: 'Tariff number', text: model.tariffNumber },
        { term: 'Battery', text: model.batteryWh === null ? null : `${model.batteryWh} Wh` },
      ]}
    />
  );
}
