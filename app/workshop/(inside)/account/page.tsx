import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { SESSION_HOURS } from '@/lib/people/auth';
import { may, ROLE_LABELS } from '@/lib/people/rules/roles';
import { IDLE_HOURS } from '@/lib/people/rules/session-end';
import { listSessions } from '@/lib/people/sessions';
import { PasswordFields } from '../../password-fields';
import { mustTurnSecondStepOn, requireSignedIn } from '../../who';
import { changeOwnPassword, endOtherSessionsAction, signOutAction, signOutEverywhereAction } from './actions';
import { SecondStepSection } from './second-step-section';
import { SessionsTable } from './sessions-table';

export const metadata: Metadata = { title: 'Your account' };

export default async function AccountPage() {
  const me = await requireSignedIn(undefined, { isSettingUp: true });
  const head = (
    <PageHead title="Your account" lead={me.name}>
      <ActionForm action={signOutAction} label="Sign out">
        <SubmitButton kind="second" label="Sign out" busy="Signing out…" />
      </ActionForm>
    </PageHead>
  );
  if (await mustTurnSecondStepOn(me)) {
    return (
      <>
        {head}
        <SecondStepSection isOn={false} isAsked />
      </>
    );
  }
  const [workshop, sessions] = await Promise.all([readWorkshop(), listSessions(me.id, new Date())]);
  return (
    <>
      {head}
      <div className="grid gap-12">
        <section aria-labelledby="you">
          <h2 id="you">You</h2>
          <Facts
            items={[
              { term: 'Address', text: me.email },
              { term: 'What you do', text: ROLE_LABELS[me.role] },
              { term: 'Initials', text: me.initials },
            ]}
          />
          <p className="field-hint mt-3">
            {may(me.role, 'people') ? (
              <>
                You change these on <TextLink href={`/workshop/people/${me.id}`}>your People page</TextLink>.
              </>
            ) : (
              'The owner changes these on the People page.'
            )}
          </p>
        </section>
        <section aria-labelledby="password">
          <h2 id="password" className="mb-3">
            Password
          </h2>
          <ActionForm action={changeOwnPassword} label="Change your password">
            <PasswordFields email={me.email} present="Present password" width="half" />
            <SubmitButton label="Change password" consequence="Signs out every other device." />
          </ActionForm>
        </section>
        <SecondStepSection isOn={me.hasSecondStep} isAsked={workshop.asksSecondStep} />
        <section aria-labelledby="sessions">
          <h2 id="sessions" className="mb-3">
            Where you are signed in
          </h2>
          <p className="prose mb-3">
            A sign-in ends after {SESSION_HOURS} hours, and after {IDLE_HOURS} hours without a click. Network
            addresses are not kept.
          </p>
          <SessionsTable
            sessions={sessions}
            presentId={me.sessionId}
            clock={{ locale: workshop.locale, zone: workshop.timeZone }}
          />
          <div className="mt-6 grid gap-6">
            {sessions.length > 1 ? (
              <ActionForm action={endOtherSessionsAction} label="Sign out the others">
                <SubmitButton
                  kind="second"
                  label="Sign out the others"
                  busy="Signing out…"
                  consequence="You stay signed in here."
                />
              </ActionForm>
            ) : null}
            <ActionForm action={signOutEverywhereAction} label="Sign out everywhere">
              <ConfirmButton
                label="Sign out everywhere"
                question="Sign out on every device, this one too?"
                confirm="Yes, sign out everywhere"
                consequence="You need your password to come back in."
              />
            </ActionForm>
          </div>
        </section>
      </div>
    </>
  );
}
