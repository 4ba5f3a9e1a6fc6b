import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { formatInstant } from '@/lib/calendar/format';
import { type PolicyVersionRow, readPolicy } from '@/lib/catalogue/staff-records';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../../who';
import { SavedNote } from '../../saved-note';
import { retirePolicyAction, savePolicyAction } from '../actions';
import { PolicyFields } from '../policy-fields';
import { TermsFacts } from '../terms-facts';

const readOnce = cache(readPolicy);

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ saved?: string }> };

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff();
  const found = await readOnce((await params).id);
  return { title: found ? found.name : 'Not found' };
}

export default async function PolicyPage({ params, searchParams }: Props) {
  const staff = await requireStaff();
  const { id } = await params;
  const { saved } = await searchParams;
  const [policy, workshop] = await Promise.all([readOnce(id), readWorkshop()]);
  const newest = policy?.versions[0];
  if (!policy || !newest) nothingHere();
  const since = (at: Date) => formatInstant(at, { locale: workshop.locale, zone: workshop.timeZone });
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/catalogue/policies">Policies</TextLink>}
        title={policy.name}
        lead={`Version ${newest.version}, since ${since(newest.createdAt)}. ${certificatesText(newest.certificates)}${policy.isRetired ? ' Retired: no repair is offered it any more.' : ''}`}
      />
      <SavedNote saved={saved}>{`Version ${newest.version} counts for bookings from now on.`}</SavedNote>
      <TermsFacts terms={newest.terms} />
      {may(staff.role, 'catalogue') ? (
        <section aria-labelledby="next" className="mt-12">
          <h2 id="next" className="mb-3">
            Write the next version
          </h2>
          <ActionForm
            action={savePolicyAction.bind(null, id)}
            hidden={{ mark: policy.mark }}
            label={`Change ${policy.name}`}
          >
            <PolicyFields known={{ name: policy.name, terms: newest.terms }} />
            <SubmitButton
              label="Save the policy"
              busy="Saving…"
              consequence={`Changed terms make version ${newest.version + 1}. What is booked and certificates that are out keep theirs.`}
            />
          </ActionForm>
        </section>
      ) : null}
      {may(staff.role, 'catalogue') ? (
        <section aria-labelledby="retire" className="mt-12">
          <h2 id="retire" className="mb-3">
            {policy.isRetired ? 'Offer it again' : 'Retire it'}
          </h2>
          <ActionForm
            action={retirePolicyAction.bind(null, id)}
            hidden={{ retire: policy.isRetired ? 'no' : 'yes' }}
            label={policy.isRetired ? 'Offer this policy again' : 'Retire this policy'}
          >
            <SubmitButton
              kind="second"
              label={policy.isRetired ? 'Offer this policy again' : 'Retire this policy'}
              consequence={
                policy.isRetired
                  ? 'Repairs can be put under it again.'
                  : 'No further repair is offered it. Repairs that stand under it, what is booked and certificates keep it; it can be offered again.'
              }
            />
          </ActionForm>
        </section>
      ) : null}
      <OlderVersions versions={policy.versions.slice(1)} since={since} />
    </>
  );
}

function OlderVersions({
  versions,
  since,
}: {
  versions: readonly PolicyVersionRow[];
  since: (at: Date) => string;
}) {
  if (versions.length === 0) return null;
  return (
    <section aria-labelledby="older" className="mt-12">
      <h2 id="older" className="mb-3">
        Older versions
      </h2>
      {versions.map((version) => (
        <details key={version.id} className="border-b border-rule">
          <summary className="py-3">
            Version {version.version}, since {since(version.createdAt)}.{' '}
            {certificatesText(version.certificates)}
          </summary>
          <TermsFacts terms={version.terms} />
        </details>
      ))}
    </section>
  );
}

function certificatesText(count: number): string {
  if (count === 0) return 'No certificate was issued under it.';
  return count === 1 ? 'One certificate was issued under it.' : `${count} certificates were issued under it.`;
}
