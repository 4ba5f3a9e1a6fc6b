import { type Day, dayInZone } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { USUAL_TRANSIT } from '@/lib/parcels/rules/carriers';
import { countCover } from '@/lib/warranty/rules/cover';
import { type Covered, firstCover } from '@/lib/warranty/rules/first-cover';
import { renewCover } from '@/lib/warranty/rules/renew';
import { startDay } from '@/lib/warranty/rules/start-day';
import type { CoverLine } from '@/lib/warranty/rules/terms';
import type { KnownRepair } from './known-shop';
import type { PlannedJob } from './plan-jobs';

export type PlannedLine = CoverLine & { endsOn: Day; lotId: string | null };

const WEEKENDS: WorkingCalendar = { weekend: [6, 7], closed: new Map() };

/** The cover lines of a first certificate, by the workshop's own rules. */
export function planLines(
  repair: KnownRepair,
  lot: { id: string } | null,
  sentBackAt: number,
): PlannedLine[] {
  const { terms, symptoms, part } = repair;
  const covered: Covered[] = [
    { id: 'work-1', kind: 'work', description: repair.name, symptoms: [...symptoms] },
  ];
  if (lot && part)
    covered.push({ id: 'part-1', kind: 'part', description: part.name, symptoms: [...symptoms] });
  const from = startDay(
    terms.startEvent,
    dayInZone(new Date(sentBackAt), 'UTC'),
    WEEKENDS,
    USUAL_TRANSIT.home,
  );
  return firstCover(covered, terms, from).map((line) => ({
    ...line,
    endsOn: countCover(line, [], terms, WEEKENDS).end,
    lotId: line.kind === 'part' && lot ? lot.id : null,
  }));
}

/** The lines of the next revision, after a covered claim on all of them. */
export function renewedLines(first: PlannedJob, stay: { from: number; to: number }): PlannedLine[] {
  const before = first.certificate?.lines ?? [];
  const { terms } = first.repair;
  const heldNow = {
    from: dayInZone(new Date(stay.from), 'UTC'),
    to: dayInZone(new Date(stay.to), 'UTC'),
    claimNumber: '',
  };
  const touched = before.map((line) => line.id);
  const { lines } = renewCover({ lines: before, touched, heldBefore: [], heldNow, terms });
  return lines.map((line) => ({
    ...line,
    endsOn: countCover(line, [heldNow], terms, WEEKENDS).end,
    lotId: before.find(({ id }) => id === line.id)?.lotId ?? null,
  }));
}
