import type { Metadata } from 'next';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { requireStaff } from '../../../who';
import { savePartAction } from '../actions';
import { PartFields } from '../part-fields';

export const metadata: Metadata = { title: 'Add a part' };

export default async function NewPartPage() {
  await requireStaff('bench');
  return (
    <>
      <PageHead above={<TextLink href="/workshop/parts">Parts</TextLink>} title="Add a part" />
      <ActionForm action={savePartAction.bind(null, null)} label="Add a part">
        <PartFields />
        <SubmitButton
          label="Add the part"
          busy="Adding…"
          consequence="Next: book its first delivery in as a lot."
        />
      </ActionForm>
    </>
  );
}
