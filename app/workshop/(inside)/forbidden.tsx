import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { permissionTable, ROLE_LABELS } from '@/lib/people/rules/roles';
import { whoIsSignedIn } from '../who';

/** Status 403: which role the reader has, and which one each kind of work needs. */
export default async function ForbiddenPage() {
  const me = await whoIsSignedIn();
  return (
    <>
      <PageHead
        title="This page is for another role"
        lead={me ? `You are signed in as ${ROLE_LABELS[me.role].toLowerCase()}.` : undefined}
        next="ask somebody with the role below, or the owner, who can change yours on the People page."
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
          { key: 'work', head: 'Work', kind: 'rowhead', cell: (row) => row.label },
          {
            key: 'roles',
            head: 'Roles',
            cell: (row) => row.roles.map((role) => ROLE_LABELS[role]).join(', '),
          },
        ]}
      />
    </>
  );
}
