import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { formatInstant } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { listStaff } from '@/lib/people/records';
import { ROLE_LABELS, rolesThatMay } from '@/lib/people/rules/roles';
import { requireStaff } from '../../who';
import { addStaffAction } from './actions';
import { StaffFields } from './staff-fields';

export const metadata: Metadata = { title: 'People' };

export default async function PeoplePage() {
  await requireStaff(rolesThatMay('people'));
  const [staff, workshop] = await Promise.all([listStaff(now()), readWorkshop()]);
  const clock = { locale: workshop.locale, zone: workshop.timeZone };
  return (
    <>
      <PageHead title="People" lead="Who works here, and what each may do." />
      <Table
        caption="Staff"
        captionHidden
        rows={staff}
        rowKey={(person) => person.id}
        columns={[
          {
            key: 'name',
            head: 'Name',
            kind: 'rowhead',
            cell: (person) => <TextLink href={`/workshop/people/${person.id}`}>{person.name}</TextLink>,
          },
          { key: 'initials', head: 'Initials', cell: (person) => person.initials },
          { key: 'role', head: 'What they do', cell: (person) => ROLE_LABELS[person.role] },
          { key: 'email', head: 'Address', cell: (person) => person.email },
          {
            key: 'step',
            head: 'Second step',
            cell: (person) => (
              <Tag tone={person.hasSecondStep ? 'good' : 'warn'}>{person.hasSecondStep ? 'on' : 'off'}</Tag>
            ),
          },
          {
            key: 'state',
            head: 'Signed in',
            cell: (person) => {
              if (!person.isActive) return <Tag tone="stop">may not sign in</Tag>;
              return person.signedInSince ? `since ${formatInstant(person.signedInSince, clock)}` : 'no';
            },
          },
        ]}
      />
      <section aria-labelledby="add" className="mt-12">
        <h2 id="add" className="mb-3">
          Add somebody
        </h2>
        <ActionForm action={addStaffAction} label="Add somebody">
          <StaffFields />
          <SubmitButton
            label="Add"
            busy="Adding…"
            consequence="Shows a temporary password once, for you to hand over. Nothing is sent by e-mail."
          />
        </ActionForm>
      </section>
    </>
  );
}
