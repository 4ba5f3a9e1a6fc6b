import { Notice } from '@/app/ui/page/notice';
import { showNumber } from '@/lib/numbers/job-number';
import { type Contact, isOtherClaimant } from '@/lib/warranty/rules/claimant';
import type { CaseProps } from './open-case';

/** Where a certificate does not pass to a new owner and another name or address claims on it: both, for a person to compare. */
export function ClaimantPart({ found }: CaseProps) {
  const { job, chain, first } = found;
  const claimant = job.customer;
  if (!isOtherClaimant({ transferable: chain.terms.transferable, first: first.customer, claimant }))
    return null;
  return (
    <Notice kind="note" heading="Perhaps another owner">
      <p>
        {`This certificate does not pass to a new owner. The repair it stands on, ${showNumber(first.jobNumber)}, was for ${named(first.customer)}; this claim is from ${named(claimant)}. Ask whether that is the same person, before you rule. You may honour the certificate all the same, and what a new owner has by law is not touched.`}
      </p>
    </Notice>
  );
}

function named({ name, email }: Contact): string {
  return email === '' ? name : `${name} (${email})`;
}
