import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { formatInstant } from '@/lib/calendar/format';
import { listStaff } from '@/lib/people/records';
import { ROLE_LABELS } from '@/lib/people/rules/roles';
import { requireStaff } from '../../who';
import { addStaffAction, askForSecondStepAction } from './actions';
import { StaffFields } from './staff-fields';

export const metadata: Metadata = { title: 'People' };

export default async function PeoplePage() {
  await requireStaff('people');
  const [staff, workshop] = await Promise.all([listStaff(new Date()), readWorkshop()]);
  const clock = { locale: workshop.locale, zone: workshop.timeZone };
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/settings">Settings</TextLink>}
        title="People"
        lead="Who works here, and what each may do."
      />
      <Table
        caption="Staff"
        captionHidden
        rows={staff}
        rowKey={(person) => person.id}
        columns={[
          {
            head: 'Name',
            kind: 'rowhead',
            cell: (person) => <TextLink href={`/workshop/people/${person.id}`}>{person.name}</TextLink>,
          },
          { head: 'Initials', cell: (person) => person.initials },
          { head: 'What they do', cell: (person) => ROLE_LABELS[person.role] },
          { head: 'Address', cell: (person) => person.email },
          {
            head: 'Second step',
            cell: (person) => (
              <Tag tone={person.hasSecondStep ? 'good' : 'warn'}>{person.hasSecondStep ? 'on' : 'off'}</Tag>
            ),
          },
          {
            head: 'Signed in',
            cell: (person) => {
              if (!person.isActive) return <Tag tone="stop">may not sign in</Tag>;
              return person.signedInSince ? `since ${formatInstant(person.signedInSince, clock)}` : 'no';
            },
          },
        ]}
      />
      <section aria-labelledby="second-step" className="mt-12">
        <h2 id="second-step" className="mb-3">
          Second step
        </h2>
        <p className="prose mb-3">
          A password that leaks is not enough to get in where signing in also asks for a code from a phone.
          Once everybody is asked for it, whoever has it off turns it on first and sees nothing else until
          then.
        </p>
        <ActionForm
          action={askForSecondStepAction}
          label="Who has to have the second step"
          hidden={{ seenAt: workshop.updatedAt.toISOString() }}
        >
          <RadioGroup
            name="asked"
            label="Ask everybody for it"
            defaultValue={workshop.asksSecondStep ? 'yes' : 'no'}
            choices={[
              { value: 'yes', label: 'Yes', hint: 'Turn your own on before, on your account page.' },
              { value: 'no', label: 'No, each decides' },
            ]}
          />
          <SubmitButton label="Save" busy="Saving…" consequence="Counts from everybody’s next click." />
        </ActionForm>
      </section>
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
