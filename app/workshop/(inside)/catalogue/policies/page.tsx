import type { Metadata } from 'next';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { listPolicies } from '@/lib/catalogue/staff-records';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../who';
import { TermsFacts } from './terms-facts';

export const metadata: Metadata = { title: 'Policies' };

export default async function PoliciesPage() {
  const staff = await requireStaff();
  const policies = await listPolicies();
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/catalogue">Catalogue</TextLink>}
        title="Policies"
        lead="What a certificate promises. A certificate keeps the version it was issued under."
      >
        {may(staff.role, 'catalogue') ? (
          <LinkButton href="/workshop/catalogue/policies/new">Write a policy</LinkButton>
        ) : null}
      </PageHead>
      {policies.length === 0 ? (
        <p className="empty">No policy yet. A repair needs one before it can be listed.</p>
      ) : null}
      <div className="grid gap-10">
        {policies.map((policy) => {
          const newest = policy.versions[0];
          return (
            <section key={policy.id} aria-label={policy.name}>
              <h2>
                <TextLink href={`/workshop/catalogue/policies/${policy.id}`}>{policy.name}</TextLink>{' '}
                {policy.isRetired ? <Tag tone="waiting">retired</Tag> : null}
              </h2>
              <p className="mb-2 text-small text-soft">
                Version {newest?.version ?? 0}. {policy.repairs}{' '}
                {policy.repairs === 1 ? 'repair stands' : 'repairs stand'} under it.
              </p>
              {newest ? <TermsFacts terms={newest.terms} /> : null}
            </section>
          );
        })}
      </div>
    </>
  );
}
