import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { ROLE_LABELS } from '@/lib/people/rules/roles';
import { whoIsSignedIn } from '../who';

/** What somebody else finds on a page that is the owner's alone. */
export async function OwnerOnly({ page }: { page: string }) {
  const me = await whoIsSignedIn();
  return (
    <PageHead
      title={`${page} is for the owner`}
      lead={
        me
          ? `You are signed in as ${ROLE_LABELS[me.role].toLowerCase()}; this page needs the role of owner.`
          : undefined
      }
      next="ask the owner to do it, or to change your role."
    >
      <LinkButton href="/workshop" kind="second">
        Go to Today
      </LinkButton>
    </PageHead>
  );
}
