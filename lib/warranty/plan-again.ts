import { dayFromDate, dayInZone, maxDay } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import type { JobRecord } from '@/lib/jobs/records';
import { wasAway } from '@/lib/jobs/rules/handover';
import { readChain } from './records';
import { detour } from './rules/sent-again';
import { returnDay, startDay } from './rules/start-day';
import type { HeldInterval } from './rules/terms';
import { readTerms } from './stored-terms';

/** Days held that a dispatch keeps, on the certificate they are given back on. */
export type HeldRow = HeldInterval & { certificateNumber: string };

/**
 * What changes about the cover of a unit that leaves once more, after its carrier brought it back, or for the first time, after
 * that was recorded by mistake: no certificate is issued, and the days until it leaves are held (rules/sent-again.ts). A stay on a claim ends with the new return, and so
 * does what a renewed minimum is counted from (renewedEnd, rules/cover.ts).
 */
export async function planAgain(
  job: JobRecord,
  o: { now: Date; timeZone: string; calendar: WorkingCalendar; transitDays: number },
): Promise<HeldRow[]> {
  const today = dayInZone(o.now, o.timeZone);
  const held: HeldRow[] = [];
  if (job.claim) {
    const { number, certificateNumber } = job.claim;
    const chain = await readChain(certificateNumber);
    const stay = chain?.held.find(({ claimNumber }) => claimNumber === number);
    const to = returnDay(today, o.calendar, o.transitDays);
    if (stay) held.push({ ...stay, certificateNumber, to: maxDay(stay.to, to) });
  }
  const first = job.certificates.find(({ revision }) => revision === 1);
  const [line] = first?.lines ?? [];
  if (first && line) {
    const { startEvent } = readTerms(first.policyVersion);
    const days = detour({
      startEvent,
      wasAway: wasAway(job.events),
      startsOn: dayFromDate(line.startsOn),
      again: startDay(startEvent, today, o.calendar, o.transitDays),
    });
    // A stay has the number of what it was for: here the job itself, and its next detour is the same one made longer.
    if (days) held.push({ ...days, certificateNumber: first.number, claimNumber: job.number });
  }
  return held;
}
