import { type Day, dayInZone } from '@/lib/calendar/day';
import type { JobRecord } from '@/lib/jobs/records';
import { readTransitDays } from '@/lib/parcels/stored-transit';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import type { Chain } from './records';
import { renewCover } from './rules/renew';
import { readRenewal, stayOf } from './stored-renewal';

export type RenewalLine = {
  id: string;
  what: string;
  isRenewed: boolean;
  /** its part was replaced on this job, so that it is renewed whatever is named */
  isFitted: boolean;
  hasEnded: boolean;
  /** last day of cover were the unit posted today: as it is, and renewed */
  until: Day;
  renewedUntil: Day;
};

/** The lines of a claim's certificate, each with what a renewal makes of it, for whoever names what was done again. */
export async function renewalView(
  found: { job: JobRecord; claim: NonNullable<JobRecord['claim']>; chain: Chain },
  o: { workshop: WorkshopCard; now: Date },
): Promise<RenewalLine[]> {
  const { job, claim, chain } = found;
  const { timeZone } = o.workshop;
  const today = dayInZone(o.now, timeZone);
  const { before, touched, fittedAgain, ended } = await readRenewal(job, claim, chain);
  const calendar = await readCalendar(o.workshop, today);
  const transitDays = await readTransitDays(job, null, o.workshop);
  const cover = {
    lines: before,
    heldBefore: chain.held,
    heldNow: stayOf(job, claim, { today, timeZone, calendar, transitDays }),
    terms: chain.terms,
  };
  const ends = endings(renewCover({ ...cover, touched: [] }));
  const renewed = endings(renewCover({ ...cover, touched: before.map(({ id }) => id) }));
  return before.map((line) => ({
    id: line.id,
    what: `${line.kind === 'work' ? 'Work' : 'Part'}: ${line.description}`,
    isRenewed: touched.includes(line.id),
    isFitted: fittedAgain.includes(line.id),
    hasEnded: ended.includes(line.id),
    until: ends(line.id),
    renewedUntil: renewed(line.id),
  }));
}

function endings(cover: ReturnType<typeof renewCover>): (id: string) => Day {
  const byId = new Map(cover.endings.map(({ lineId, now }) => [lineId, now]));
  return (id) => {
    const end = byId.get(id);
    if (!end) throw new Error('a renewed cover lost a line');
    return end;
  };
}
