import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { ActionForm } from '@/app/ui/forms/action-form';
import { Checkbox, RadioGroup } from '@/app/ui/forms/choices';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { readStaff } from '@/lib/people/records';
import { requireStaff } from '../../../who';
import { changeStaffAction, resetPasswordAction } from '../actions';
import { StaffFields } from '../staff-fields';

const readOnce = cache((id: string) => readStaff(id, new Date()));

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff('people');
  const found = await readOnce((await params).id);
  return { title: found ? found.name : 'Not found' };
}

export default async function PersonPage({ params }: Props) {
  const me = await requireStaff('people');
  const { id } = await params;
  const person = await readOnce(id);
  if (!person) nothingHere();
  return (
    <>
      <PageHead above={<TextLink href="/workshop/people">People</TextLink>} title={person.name} />
      <ActionForm
        action={changeStaffAction.bind(null, id)}
        hidden={{ mark: person.mark }}
        label={`Change ${person.name}`}
      >
        <StaffFields known={person} />
        <RadioGroup
          name="isActive"
          label="May sign in"
          defaultValue={person.isActive ? 'yes' : 'no'}
          choices={[
            { value: 'yes', label: 'Yes' },
            {
              value: 'no',
              label: 'No',
              hint: 'Ends their sessions at once. Their name stays on everything they did.',
            },
          ]}
        />
        <SubmitButton
          label="Save"
          busy="Saving…"
          consequence="Takes effect the next time they open a page."
        />
      </ActionForm>
      {me.id === id ? null : (
        <section aria-labelledby="reset" className="mt-12">
          <h2 id="reset" className="mb-3">
            Cannot sign in?
          </h2>
          <ActionForm action={resetPasswordAction.bind(null, id)} label={`New password for ${person.name}`}>
            <ConfirmButton
              label="Make a temporary password"
              question={`Replace the password of ${person.name}?`}
              confirm="Yes, replace it"
              consequence="Shows the new one once and signs them out everywhere."
            >
              {person.hasSecondStep ? (
                <Checkbox
                  name="secondStepOff"
                  label="Also turn their second step off"
                  hint="For a person who has lost the phone and the backup codes. Make sure that it is them."
                />
              ) : null}
            </ConfirmButton>
          </ActionForm>
        </section>
      )}
    </>
  );
}
