import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { requireStaff } from '@/app/workshop/who';
import { formatInstant } from '@/lib/calendar/format';
import { keySet } from '@/lib/warranty/key-set';
import { changeKey } from './actions';

export const metadata: Metadata = { title: 'Signing keys' };

export default async function KeysPage() {
  await requireStaff('settings');
  const [{ keys }, workshop] = await Promise.all([keySet(), readWorkshop()]);
  const shown = (instant: string) =>
    formatInstant(new Date(instant), { locale: workshop.locale, zone: workshop.timeZone });
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/settings">Settings</TextLink>}
        title="Signing keys"
        lead="Every certificate is signed, so that a copy with one changed digit fails. The public halves are published; the private one never leaves this program."
      >
        <TextLink href="/certificate/keys" file>
          Published keys (JSON)
        </TextLink>
      </PageHead>
      <Table
        caption="Keys"
        columns={[
          { head: 'Key', kind: 'rowhead', cell: (key) => <NumberText text={key.kid} /> },
          { head: 'Signs since', cell: (key) => shown(key.since) },
          { head: 'Until', cell: (key) => (key.until ? shown(key.until) : 'in use') },
        ]}
        rows={keys}
        rowKey={(key) => key.kid}
        empty="The first key is made with the first certificate."
      />
      <ActionForm action={changeKey} label="Change the key">
        <ConfirmButton
          label="Change the signing key"
          question="Retire the key in use and make a new one?"
          confirm="Yes, change the key"
          consequence="Certificates from now on carry the new key. Those already issued stay valid: the old key stays published."
        />
      </ActionForm>
    </>
  );
}
