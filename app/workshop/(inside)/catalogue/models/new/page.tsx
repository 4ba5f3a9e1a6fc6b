import type { Metadata } from 'next';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { EmptyState } from '@/app/ui/page/empty-state';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { listChoices } from '@/lib/catalogue/staff-records';
import { requireStaff } from '../../../../who';
import { saveModelAction } from '../../actions';
import { ModelFields } from '../model-fields';

export const metadata: Metadata = { title: 'Add a model' };

export default async function NewModelPage() {
  await requireStaff('catalogue');
  const { families } = await listChoices();
  return (
    <>
      <PageHead above={<TextLink href="/workshop/catalogue">Catalogue</TextLink>} title="Add a model" />
      {families.length === 0 ? (
        <EmptyState>
          A model belongs to a family, and there is none yet.{' '}
          <TextLink href="/workshop/catalogue">Add a family first</TextLink>.
        </EmptyState>
      ) : (
        <ActionForm action={saveModelAction.bind(null, null)} label="Add a model">
          <ModelFields families={families} />
          <SubmitButton
            label="Add the model"
            busy="Adding…"
            consequence="Next: its repairs with their prices."
          />
        </ActionForm>
      )}
    </>
  );
}
