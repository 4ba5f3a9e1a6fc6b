import { type Day, dayFromDate, maxDay } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';
import { rememberFor } from '@/lib/remembered';
import { readCoverLine } from './records';
import { coverEnd } from './rules/cover';
import { readTerms } from './stored-terms';

/** What is read of a certificate, with whatever leads to it, to say until when it covers. */
export const COVER_FACTS = {
  id: true,
  number: true,
  endsOn: true,
  policyVersion: true,
  lines: true,
} satisfies Prisma.CertificateSelect;

type CoverFacts = Prisma.CertificateGetPayload<{ select: typeof COVER_FACTS }>;

export type CoverEnds = {
  /** last day of the longest line */
  end: Day;
  /** last day of each line, by its id */
  lines: ReadonlyMap<string, Day>;
  /** last day to open a claim as stated, null where that was not kept */
  statedClaimDay: Day | null;
};

/**
 * Until when certificates cover today, by their ids: the end each of them states, moved by the days given back since. A stay
 * after which no next revision was issued moves the end and leaves the paper and its row as they are, so whoever asks
 * whether cover lives asks here; what the paper says is `endsOn` of its row.
 */
export async function readCoverEnds(
  certificates: readonly CoverFacts[],
  client: Tx = db,
): Promise<Map<string, CoverEnds>> {
  if (certificates.length === 0) return new Map();
  const held = await client.heldInterval.findMany({
    where: { certificateNumber: { in: [...new Set(certificates.map(({ number }) => number))] } },
    select: { certificateNumber: true, claimNumber: true, fromDay: true, toDay: true, isByMistake: true },
  });
  return new Map(
    certificates.map(({ id, number, endsOn, policyVersion, lines }) => {
      const stays = held
        .filter((row) => row.certificateNumber === number)
        .map(({ fromDay, toDay, claimNumber, isByMistake }) => ({
          from: dayFromDate(fromDay),
          to: dayFromDate(toDay),
          claimNumber,
          isByMistake,
        }));
      // Nothing was held for almost every certificate, and then its row says it all.
      const ends = lines.map((line): [string, Day] => [
        line.id,
        stays.length === 0
          ? dayFromDate(line.endsOn)
          : coverEnd(readCoverLine(line), stays, readTerms(policyVersion)),
      ]);
      const end = maxDay(dayFromDate(endsOn), ...ends.map(([, each]) => each));
      const [first, ...rest] = lines.flatMap(({ lastClaimDay }) => lastClaimDay ?? []).map(dayFromDate);
      return [id, { end, lines: new Map(ends), statedClaimDay: first ? maxDay(first, ...rest) : null }];
    }),
  );
}

const recent = rememberFor<Map<string, CoverEnds>>(60_000);

/**
 * The same for Today, kept for a minute by each process: days are given back to a certificate when its unit leaves, and the claim is on
 * the list no more. A claim that comes, or a next revision, is another question and is read at once.
 */
export function recentCoverEnds(
  certificates: readonly CoverFacts[],
  now: Date,
): Promise<Map<string, CoverEnds>> {
  const key = certificates
    .map(({ id }) => id)
    .sort()
    .join();
  return recent.of(key, now, () => readCoverEnds(certificates));
}

/** As a fact of a mail, until when a certificate covers now; nothing where that is the day it states. */
export async function coveredUntilFact(certificate: CoverFacts, tx: Tx): Promise<{ coveredUntil?: Day }> {
  const end = (await readCoverEnds([certificate], tx)).get(certificate.id)?.end;
  return end && end !== dayFromDate(certificate.endsOn) ? { coveredUntil: end } : {};
}
