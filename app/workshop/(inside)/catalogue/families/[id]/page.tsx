import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { ActionForm } from '@/app/ui/forms/action-form';
import { CountField } from '@/app/ui/forms/count-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { readFamily } from '@/lib/catalogue/staff-records';
import { requireStaff } from '../../../../who';
import { saveFamilyAction } from '../../actions';

const readOnce = cache(readFamily);

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff('catalogue');
  const found = await readOnce((await params).id);
  return { title: found ? `Family ${found.name}` : 'Not found' };
}

export default async function FamilyPage({ params }: Props) {
  await requireStaff('catalogue');
  const { id } = await params;
  const family = await readOnce(id);
  if (!family) nothingHere();
  return (
    <>
      <PageHead above={<TextLink href="/workshop/catalogue">Catalogue</TextLink>} title={family.name} />
      <ActionForm
        action={saveFamilyAction.bind(null, id)}
        hidden={{ mark: family.mark }}
        label={`Change ${family.name}`}
      >
        <TextField name="name" label="Name" width="half" autoComplete="off" defaultValue={family.name} />
        <CountField
          name="position"
          label="Place on the price list"
          hint="Families stand in the order of this number."
          defaultValue={family.position}
        />
        <SubmitButton label="Save" busy="Saving…" consequence="Customers see the new name at once." />
      </ActionForm>
    </>
  );
}
