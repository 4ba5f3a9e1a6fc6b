import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { requireStaff } from '@/app/workshop/who';
import { readCarrierRows } from '@/lib/parcels/records';
import { keepCarrier } from '../actions';
import { CarrierFields } from '../carrier-fields';

export const metadata: Metadata = { title: 'Add a carrier' };

export default async function NewCarrierPage() {
  await requireStaff('settings');
  const [carriers, { currency }] = await Promise.all([readCarrierRows(), readWorkshop()]);
  const place = Math.max(-1, ...carriers.map((each) => each.position)) + 1;
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/settings/carriers">Carriers</TextLink>}
        title="Add a carrier"
        lead="Take the figures from the carrier’s own terms."
      />
      <ActionForm action={keepCarrier.bind(null, null)} label="Add a carrier">
        <CarrierFields carrier={null} place={place} currency={currency} />
        <SubmitButton
          label="Add the carrier"
          busy="Adding…"
          consequence="It is offered when units go back."
        />
      </ActionForm>
    </>
  );
}
