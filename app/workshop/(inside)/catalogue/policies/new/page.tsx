import type { Metadata } from 'next';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { requireStaff } from '../../../../who';
import { savePolicyAction } from '../actions';
import { PolicyFields } from '../policy-fields';

export const metadata: Metadata = { title: 'Write a policy' };

export default async function NewPolicyPage() {
  await requireStaff('catalogue');
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/catalogue/policies">Policies</TextLink>}
        title="Write a policy"
        lead="A promise in writing. It never takes away a right that the law gives."
      />
      <ActionForm action={savePolicyAction.bind(null, null)} label="Write a policy">
        <PolicyFields />
        <SubmitButton
          label="Save the policy"
          busy="Saving…"
          consequence="Repairs can stand under it from now on."
        />
      </ActionForm>
    </>
  );
}
