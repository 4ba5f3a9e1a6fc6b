import { type Day, dayFromDate, dayInZone, maxDay } from '@/lib/calendar/day';
import { describePeriod } from '@/lib/calendar/period';
import type { WorkshopCard } from '@/lib/workshop/card';
import { coverCalendar } from './cover-calendar';
import { type CertificateRecord, type Chain, readCoverLine } from './records';
import { countCover } from './rules/cover';
import { explainCount } from './rules/cover-sentences';
import { readTerms } from './stored-terms';

export type CoverView = {
  lines: {
    id: string;
    what: string;
    term: string;
    from: Day;
    until: Day;
    explained: string;
    isRunning: boolean;
  }[];
  /** last day of the longest line, with days given back */
  endsOn: Day;
  lastClaimDay: Day;
  isRunning: boolean;
  issuedOn: Day;
};

/** The cover of one revision as it stands today, counted by the rules, for the public page and the staff's. */
export async function coverView(
  chain: Chain,
  record: CertificateRecord,
  o: { workshop: WorkshopCard; now: Date },
): Promise<CoverView> {
  const today = dayInZone(o.now, o.workshop.timeZone);
  const terms = readTerms(record.policyVersion);
  const covered = record.lines.map(readCoverLine);
  const calendar = await coverCalendar({ lines: covered, held: chain.held, terms }, { ...o, today });
  const lines = covered.map((line) => {
    const count = countCover(line, chain.held, terms, calendar);
    return {
      count,
      view: {
        id: line.id,
        what: `${line.kind === 'work' ? 'Work' : 'Part'}: ${line.description}`,
        term: describePeriod(line.term),
        from: line.startsOn,
        until: count.end,
        explained: explainCount(count, o.workshop.locale),
        isRunning: today <= count.end,
      },
    };
  });
  const latest = (pick: (each: (typeof lines)[number]) => Day) =>
    maxDay(dayFromDate(record.issuedOn), ...lines.map(pick));
  return {
    lines: lines.map(({ view }) => view),
    endsOn: latest(({ count }) => count.end),
    lastClaimDay: latest(({ count }) => count.lastClaimDay),
    isRunning: lines.some(({ view }) => view.isRunning),
    issuedOn: dayFromDate(record.issuedOn),
  };
}
