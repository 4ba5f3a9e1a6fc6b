import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { readJob } from '@/lib/jobs/records';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { readChain } from './records';
import { NAMED_SENTENCES, namedProblem } from './rules/renewal-named';
import { isCoveredAtLeastPartly } from './rules/ruling';
import { readRenewal } from './stored-renewal';
import { readRuling } from './stored-ruling';

const NOTHING = 'Nothing is renewed by this claim: it is not ruled covered, or its unit has left.';

/**
 * Names the lines of the certificate that were done again on a covered claim, by whoever did the work, until the unit leaves: those
 * are renewed, and not what the symptom told before anybody had looked says. A later naming takes the place of an earlier one; what the
 * owner named is kept beside it, since nobody else may name less.
 */
export async function nameRenewed(
  o: ByStaff & {
    claimId: string;
    jobVersion: number;
    /** keys of lines in force */
    lines: readonly string[];
  },
): Promise<void> {
  const row = await db.claim.findUnique({ where: { id: o.claimId }, select: { jobId: true } });
  const job = row && (await readJob({ id: row.jobId }));
  if (!job) throw new Refusal('not-found', 'There is no claim with this number.');
  const { claim } = job;
  const ruled = claim && readRuling(claim);
  if (claim?.state !== 'ruled' || !ruled || !isCoveredAtLeastPartly(ruled.ruling))
    throw new Refusal('conflict', NOTHING);
  const chain = await readChain(claim.certificateNumber);
  if (!chain) throw new Error('a claim stands on a certificate that is not there');
  const renewal = await readRenewal(job, claim, chain);
  const { before, byRule, fittedAgain, ended } = renewal;
  const ids = before.map(({ id }) => id);
  const isOwner = o.actor.kind === 'owner';
  const problem = namedProblem({
    named: o.lines,
    lines: ids,
    byRule,
    byOwner: claim.ownerRenewedAt ? claim.ownerRenewedLines : null,
    fittedAgain,
    ended,
    isOwner,
  });
  if (problem)
    throw new Refusal(
      problem === 'fewer' || problem === 'ended' ? 'not-allowed' : 'invalid',
      NAMED_SENTENCES[problem],
      'lines',
    );
  const named = before.filter(({ id }) => o.lines.includes(id));
  const renewedLines = named.map(({ id }) => id);
  await transaction(async (tx) => {
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.jobVersion },
      event: {
        kind: 'renewal-named',
        data: { claim: claim.number, lines: named.map(({ description }) => description) },
      },
    });
    await tx.claim.update({
      where: { id: o.claimId },
      data: {
        renewedLines,
        renewedNamedAt: o.now,
        renewedNamedBy: o.actor.id,
        ...(isOwner && { ownerRenewedLines: renewedLines, ownerRenewedAt: o.now }),
      },
    });
  });
}
