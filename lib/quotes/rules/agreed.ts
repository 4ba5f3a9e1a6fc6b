type HasRevisions<R> = { quotes: readonly { revisions: readonly R[] }[] };

/** The price a job goes by: the revision that was accepted, of which there is one at most; undefined before the first. */
export function agreedOf<R extends { state: string }>(job: HasRevisions<R>): R | undefined {
  return job.quotes[0]?.revisions.find(({ state }) => state === 'accepted');
}

/** The price of a job that waits for its customer's answer; undefined where none does. */
export function offerOf<R extends { state: string }>(job: HasRevisions<R>): R | undefined {
  return job.quotes[0]?.revisions.find(({ state }) => state === 'sent');
}

/**
 * Whether a price beyond the first one was agreed to and is not nothing: on a claim, what is repaired although it is not covered.
 * A contract that the customer withdrew from is none.
 */
export function hasAgreedPaidOffer(
  job: HasRevisions<{ state: string; revision: number; grossMinor: number }> & { withdrawnAt: Date | null },
): boolean {
  const agreed = agreedOf(job);
  return agreed !== undefined && agreed.revision > 1 && agreed.grossMinor > 0 && job.withdrawnAt === null;
}

/** In place of who said yes: the price of a claim that the workshop opened follows from the certificate, and is nothing. */
export const BY_CERTIFICATE = 'certificate';

/**
 * Whether the price that stands was agreed to. The first one of a unit that came without a booking was written by staff and is
 * nobody's yes; what stands by a certificate, or after a no, a withdrawal or a repair that was given up, follows from the terms.
 */
export function isAgreedTo(standing: { revision: number; decidedBy: string | null } | undefined): boolean {
  if (standing === undefined) return false;
  const { revision, decidedBy } = standing;
  return revision > 1 || decidedBy === 'customer' || decidedBy === BY_CERTIFICATE;
}
