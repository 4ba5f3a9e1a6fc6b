import type { Metadata } from 'next';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { isRole, permissionTable, ROLE_LABELS, type Role } from '@/lib/people/rules/roles';
import { requireStaff } from '../../who';

export const metadata: Metadata = { title: 'For another role' };

type Props = { searchParams: Promise<{ needs?: string | string[] }> };

/** Where requireStaff sends somebody without the role; proxy.ts answers it with status 403. */
export default async function NotYoursPage({ searchParams }: Props) {
  const me = await requireStaff();
  const { needs } = await searchParams;
  const needed = String(needs ?? '')
    .split(',')
    .filter(isRole);
  return (
    <>
      <PageHead
        title="This page is for another role"
        lead={`You are signed in as ${name(me.role)}.${needed.length > 0 ? ` It needs ${needed.map(name).join(' or ')}.` : ''}`}
        next="ask somebody with that role, or the owner, who can change yours on the People page."
      >
        <LinkButton href="/workshop" kind="second">
          Go to Today
        </LinkButton>
      </PageHead>
      <Table
        caption="Who may do what"
        rows={permissionTable()}
        rowKey={(row) => row.permission}
        columns={[
          { head: 'Work', kind: 'rowhead', cell: (row) => row.label },
          { head: 'Roles', cell: (row) => row.roles.map((role) => ROLE_LABELS[role]).join(', ') },
        ]}
      />
    </>
  );
}

function name(role: Role): string {
  return ROLE_LABELS[role].toLowerCase();
}
