import { compareDays, type Day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { readStage } from '@/lib/jobs/records';
import { FINAL_STAGES } from '@/lib/jobs/rules/stages';
import { WAITING_REQUESTS } from '@/lib/quotes/rules/request-states';
import { lastGraceDay } from '@/lib/warranty/rules/cover';
import { COVER_FACTS, readCoverEnds } from '@/lib/warranty/stored-cover-ends';
import { POSTAGE_OF_CLAIM, readPostageStanding } from '@/lib/warranty/stored-postage';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import type { RemovalFacts } from './rules/retention';

export type RemovalRows = { customerIds: readonly string[]; quoteIds: readonly string[] };

/**
 * What stands against removing the data of these bookings and requests today.
 *
 * Cover belongs to a certificate's number, not to the booking: each claim is booked anew and each next revision is of the
 * claim's job. So a booking waits for the revision in force of every number its jobs were issued or claimed under, and for
 * every open claim on it, whoever opened it: the next unit is compared with the photos of the earlier ones.
 */
export async function readRemovalFacts(
  rows: RemovalRows,
  on: { today: Day; workshop: Pick<WorkshopCard, 'holidayCountry' | 'holidayRegion'> },
  client: Tx = db,
): Promise<RemovalFacts & { coverUntil: Day | null }> {
  const jobs = await client.job.findMany({
    where: { customerId: { in: [...rows.customerIds] } },
    select: {
      number: true,
      stage: true,
      certificates: { select: { number: true } },
      soughtSince: true,
      claim: { select: { certificateNumber: true, ...POSTAGE_OF_CLAIM } },
    },
    orderBy: { number: 'asc' },
  });
  const numbers = jobs.flatMap(({ certificates, claim }) => [
    ...certificates.map(({ number }) => number),
    ...(claim ? [claim.certificateNumber] : []),
  ]);
  const certificates = await client.certificate.findMany({
    where: { number: { in: numbers }, supersededAt: null },
    select: COVER_FACTS,
  });
  const claims = await client.claim.findMany({
    where: { certificateNumber: { in: numbers }, state: { not: 'closed' } },
    select: { number: true },
    orderBy: { number: 'asc' },
  });
  const quotes = await client.quote.findMany({
    where: { id: { in: [...rows.quoteIds] }, request: { state: { in: [...WAITING_REQUESTS] } } },
    select: { number: true },
    orderBy: { number: 'asc' },
  });
  const ends = await readCoverEnds(certificates, client);
  const calendar = await readCalendar(
    on.workshop,
    on.today,
    client,
    [...ends.values()].map(({ end }) => end),
  );
  const cover = certificates
    .flatMap(({ id, number, policyVersion }) => {
      const cover = ends.get(id);
      if (!cover) return [];
      const until = lastGraceDay(cover.end, policyVersion, calendar, cover.statedClaimDay);
      return [{ number, until }];
    })
    .filter(({ until }) => compareDays(until, on.today) >= 0)
    .sort((a, b) => compareDays(b.until, a.until));
  return {
    openJobs: jobs.filter((job) => !FINAL_STAGES.includes(readStage(job.stage))).map((job) => job.number),
    openQuotes: quotes.map((quote) => quote.number),
    openClaims: claims.map((claim) => claim.number),
    soughtParcels: jobs.filter((job) => job.soughtSince !== null).map((job) => job.number),
    postageAsked: jobs.filter((job) => readPostageStanding(job.claim) === 'asked').map((job) => job.number),
    liveCover: cover.map(({ number }) => number),
    coverUntil: cover[0]?.until ?? null,
  };
}
