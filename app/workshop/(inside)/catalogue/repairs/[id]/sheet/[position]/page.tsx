import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';

import { LessonLink } from '@/app/ui/docket/lesson-link';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { readRepair } from '@/lib/catalogue/staff-records';
import { requireStaff } from '../../../../../../who';
import { changeCheckAction } from '../actions';
import { CheckFields } from '../check-fields';
import { connectorChoices } from '../connector-choices';

const readOnce = cache(readRepair);

type Props = { params: Promise<{ id: string; position: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await requireStaff('catalogue');
  const { id, position } = await params;
  const found = await readOnce(id);
  return { title: found ? `Check ${position} of ${found.name}, ${found.model.name}` : 'Not found' };
}

export default async function CheckPage({ params }: Props) {
  await requireStaff('catalogue');
  const { id, position } = await params;
  const repair = await readOnce(id);
  const sheet = repair?.sheets[0];
  const check = sheet?.checks.find((each) => String(each.position) === position);
  if (!repair || !sheet || !check) nothingHere();
  const connectors = await connectorChoices(check.pinTable ?? null);
  const change = changeCheckAction.bind(null, id, sheet.version, check.position);
  return (
    <>
      <PageHead
        above={
          <TextLink href={`/workshop/catalogue/repairs/${id}/sheet`}>Check sheet of {repair.name}</TextLink>
        }
        title={`Check ${check.position}`}
        lead={check.lesson ? <LessonLink claim={check.lesson} /> : undefined}
      />
      <ActionForm action={change} label={`Change check ${check.position}`}>
        <CheckFields known={check} connectors={connectors} />
        <SubmitButton
          label="Save the check"
          busy="Saving…"
          consequence={`Makes version ${sheet.version + 1} of the sheet. Jobs already booked keep version ${sheet.version}.`}
        />
      </ActionForm>
    </>
  );
}
