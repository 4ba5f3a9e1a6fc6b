import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { requireStaff } from '@/app/workshop/who';
import { readCarrierRow } from '@/lib/parcels/records';
import { keepCarrier } from '../actions';
import { CarrierFields } from '../carrier-fields';

const readOnce = cache(readCarrierRow);

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff('settings');
  const found = await readOnce((await params).id);
  return { title: found ? `Carrier ${found.name}` : 'Not found' };
}

export default async function CarrierPage({ params }: Props) {
  await requireStaff('settings');
  const carrier = await readOnce((await params).id);
  if (!carrier) nothingHere();
  const { currency } = await readWorkshop();
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/settings/carriers">Carriers</TextLink>}
        title={carrier.name}
      />
      <ActionForm
        action={keepCarrier.bind(null, carrier.id)}
        hidden={{ mark: carrier.mark }}
        label={carrier.name}
      >
        <CarrierFields carrier={carrier} place={carrier.position} currency={currency} />
        <SubmitButton
          label="Save the carrier"
          busy="Saving…"
          consequence="Counts for parcels from now on. What was sent stays as it is."
        />
      </ActionForm>
    </>
  );
}
