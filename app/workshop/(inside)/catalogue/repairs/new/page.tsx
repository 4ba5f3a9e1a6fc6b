import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { EmptyState } from '@/app/ui/page/empty-state';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { priceKind } from '@/lib/catalogue/rules/price';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { lastTaxOfRepair, listChoices, readModel } from '@/lib/catalogue/staff-records';
import { requireStaff } from '../../../../who';
import { saveRepairAction } from '../../actions';
import { RepairFields } from '../repair-fields';

export const metadata: Metadata = { title: 'Add a repair' };

type Props = { searchParams: Promise<{ model?: string | string[] }> };

export default async function NewRepairPage({ searchParams }: Props) {
  await requireStaff('catalogue');
  const { model: modelId } = await searchParams;
  const model = typeof modelId === 'string' ? await readModel(modelId) : null;
  if (!model) nothingHere();
  const [workshop, { policies }, lastTax] = await Promise.all([
    readWorkshop(),
    listChoices(),
    lastTaxOfRepair(),
  ]);
  const name = unitName(model);
  return (
    <>
      <PageHead
        above={<TextLink href={`/workshop/catalogue/models/${model.id}`}>{name}</TextLink>}
        title={`Add a repair to ${name}`}
      />
      {policies.length === 0 ? (
        <EmptyState>
          A repair stands under a policy, and there is none yet.{' '}
          <TextLink href="/workshop/catalogue/policies/new">Write a policy first</TextLink>.
        </EmptyState>
      ) : (
        <ActionForm
          action={saveRepairAction.bind(null, model.id, null)}
          hidden={{ priceKind: priceKind(workshop) }}
          label={`Add a repair to ${name}`}
        >
          <RepairFields policies={policies} workshop={workshop} lastTax={lastTax ?? undefined} />
          <SubmitButton
            label="Add the repair"
            busy="Adding…"
            consequence="Makes its check sheet with a first check. Next: what proves it."
          />
        </ActionForm>
      )}
    </>
  );
}
