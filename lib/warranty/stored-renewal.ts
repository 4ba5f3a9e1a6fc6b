import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { symptomsOfRepairs } from '@/lib/catalogue/records';
import { db } from '@/lib/db/client';
import type { JobRecord } from '@/lib/jobs/records';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { splitCovered } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import { readWorkshop } from '@/lib/workshop/records';
import { coverCalendar } from './cover-calendar';
import { type Chain, readCoverLine } from './records';
import { addedCover } from './rules/added-cover';
import { handedInOn } from './rules/handed-in';
import { lineStanding } from './rules/standing';
import { returnDay } from './rules/start-day';
import { boundedTerm, type HeldInterval } from './rules/terms';
import { touchedLines } from './rules/touched';

type ClaimRow = NonNullable<JobRecord['claim']>;

/**
 * What a covered claim renews and adds, by what is recorded on its job: the lines in force, those that are touched, those that
 * would be had nobody named any, those whose part was fitted again, and those that had ended when the claim was opened.
 */
export async function readRenewal(job: JobRecord, claim: ClaimRow, chain: Chain) {
  const before = chain.inForce.lines.map(readCoverLine);
  const { covered, lots, fittedAgain } = addedCover({
    before: await withParts(chain),
    uses: usesOf(job),
    paid: paidOf(job),
    repairSymptoms: job.repair.symptoms,
    known: await symptomsOfRepairs(job.model.id),
  });
  const openedOn = dayFromDate(claim.openedOn);
  const { held, terms } = chain;
  const calendar = await coverCalendar(
    { lines: before, held, terms },
    { workshop: await readWorkshop(), today: openedOn },
  );
  const opened = { symptom: claim.symptom, isLetIn: claim.isLetIn === true, openedOn, calendar };
  const asked = { ...opened, lines: before, fittedAgain, held, terms };
  return {
    before,
    covered,
    lots,
    fittedAgain,
    touched: touchedLines({ ...asked, named: claim.renewedNamedAt ? claim.renewedLines : null }),
    byRule: touchedLines(asked),
    ended: before
      .filter((line) => lineStanding(line, openedOn, asked).standing === 'ended')
      .map(({ id }) => id),
  };
}

/** The days a claim keeps its unit out of its customer's hands, were it to leave on a day. */
export function stayOf(
  job: Pick<JobRecord, 'events' | 'arrivedAt'>,
  claim: Pick<ClaimRow, 'number' | 'openedOn'>,
  o: { today: Day; timeZone: string; calendar: WorkingCalendar; transitDays: number },
): HeldInterval {
  return {
    from: handedInOn({
      openedOn: dayFromDate(claim.openedOn),
      namedOn: job.events
        .filter(({ kind }) => kind === 'parcel-named')
        .map(({ at }) => dayInZone(at, o.timeZone)),
      arrivedOn: job.arrivedAt && dayInZone(job.arrivedAt, o.timeZone),
    }),
    to: returnDay(o.today, o.calendar, o.transitDays),
    claimNumber: claim.number,
  };
}

export function usesOf(job: JobRecord) {
  return job.partUses.map(({ lot, lotId }) => ({
    part: lot.part.name,
    partId: lot.partId,
    lotId,
    ownTerm: boundedTerm(lot.part.term),
  }));
}

/** The lines the customer agreed to pay for; what the certificate of a claim covers is none of them. */
export function paidOf(job: JobRecord) {
  const agreed = agreedOf(job);
  return splitCovered(agreed?.lines.map(readLine) ?? []).paid;
}

/** The lines in force, each part with its row in the parts list. */
async function withParts({ inForce }: Chain) {
  const lotIds = inForce.lines.flatMap(({ lotId }) => lotId ?? []);
  const lots = await db.lot.findMany({ where: { id: { in: lotIds } }, select: { id: true, partId: true } });
  const partOf = new Map(lots.map(({ id, partId }) => [id, partId]));
  return inForce.lines.map((line) => ({ ...readCoverLine(line), partId: partOf.get(line.lotId ?? '') }));
}
