import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { formatInstant } from '@/lib/calendar/format';
import { describeDevice } from '@/lib/people/rules/device';
import type { SessionRow } from '@/lib/people/sessions';
import { endSessionAction } from './actions';

type Props = { sessions: readonly SessionRow[]; presentId: string; clock: { locale: string; zone: string } };

/** The devices on which somebody is signed in, each with a way to end it. */
export function SessionsTable({ sessions, presentId, clock }: Props) {
  return (
    <Table
      caption="Devices"
      captionHidden
      rows={sessions}
      rowKey={(session) => session.id}
      columns={[
        { head: 'Device', kind: 'rowhead', cell: (session) => describeDevice(session.userAgent) },
        { head: 'Since', cell: (session) => formatInstant(session.createdAt, clock) },
        { head: 'Last used', cell: (session) => formatInstant(session.lastUsedAt, clock) },
        {
          head: 'End it',
          cell: (session) =>
            session.id === presentId ? (
              <Tag tone="now">this one</Tag>
            ) : (
              <ActionForm
                action={endSessionAction}
                hidden={{ session: session.id }}
                label={`Sign out ${describeDevice(session.userAgent)}, ${formatInstant(session.createdAt, clock)}`}
              >
                <SubmitButton kind="second" label="Sign it out" busy="Signing out…" />
              </ActionForm>
            ),
        },
      ]}
    />
  );
}
