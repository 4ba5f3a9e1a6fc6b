import { instantDaysBefore } from '@/lib/calendar/spans';
import { db } from '@/lib/db/client';
import { forgetLeftFilesDaily } from '@/lib/keeping/write-left-files';
import { sweepPeople } from '@/lib/keeping/write-sweep';
import { log } from '@/lib/log';
import { attempt } from '@/lib/outcome';
import { lapsePrices } from '@/lib/quotes/write-lapses';
import { forgetLeftPhotos } from '@/lib/quotes/write-left-photos';
import { DRAFT_DAYS } from './draft';
import { longSentBack } from './long-sent-back';
import { moveJob } from './move';
import { remindOfParcels } from './remind-parcels';
import { sendUnclaimedNotices } from './unclaimed-notices';

export type ClockRound = {
  closed: number;
  draftsRemoved: number;
  photosForgotten: number;
  reminded: number;
  /** of parcels that have not come */
  parcelsReminded: number;
  lapsed: number;
  /** that a unit waits for its owner */
  notices: number;
  /** bookings and requests whose people's data was kept long enough */
  peopleRemoved: number;
  /** certificates, invoices and photos that no row names */
  filesForgotten: number;
};

/**
 * What the passing of time does by itself: jobs whose unit was sent back long ago are closed, unless their customer
 * has written since, bookings that nobody
 * finished and photos that no request took are removed, prices that nobody answered are reminded of and lapse, customers whose parcel has not come are reminded, those whose
 * unit waits for them get a notice, and data kept long enough and files that no row names are removed. Every instance may run it: a move names the version it comes from, so that a
 * job is closed once.
 *
 * Each part is tried whatever became of the others: a file that cannot be deleted must not keep prices from lapsing. A part that
 * fails is told in the log, and the round fails once all were tried; the next one tries again.
 */
export async function clockRound(now: Date): Promise<ClockRound> {
  const faults: unknown[] = [];
  const part = async <T>(kind: string, work: () => Promise<T>, none: T): Promise<T> => {
    try {
      return await work();
    } catch (error) {
      log.error('clock-part-failed', { kind }, error);
      faults.push(error);
      return none;
    }
  };
  const round = {
    closed: await part('close', () => closeSentBack(now), 0),
    draftsRemoved: await part('drafts', () => removeDrafts(now), 0),
    ...(await part('prices', () => lapsePrices(now), { reminded: 0, lapsed: 0 })),
    parcelsReminded: await part('parcels', () => remindOfParcels(now), 0),
    notices: await part('notices', () => sendUnclaimedNotices(now), 0),
    photosForgotten: await part('photos', () => forgetLeftPhotos(now), 0),
    peopleRemoved: await part('people', () => sweepPeople(now), 0),
    filesForgotten: await part('files', () => forgetLeftFilesDaily(now), 0),
  };
  if (faults.length > 0) throw new AggregateError(faults, 'parts of a round of the clock failed');
  return round;
}

async function closeSentBack(now: Date): Promise<number> {
  const due = await longSentBack(now);
  let closed = 0;
  for (const { id, version, days } of due) {
    const moved = await attempt(() =>
      moveJob({
        jobId: id,
        version,
        move: 'close',
        note: `Closed ${days} days after it was sent back`,
        actor: { kind: 'clock' },
        now,
      }),
    );
    if (moved.ok) closed += 1;
  }
  return closed;
}

async function removeDrafts(now: Date): Promise<number> {
  const { count } = await db.bookingDraft.deleteMany({
    where: { jobId: null, updatedAt: { lt: instantDaysBefore(now, DRAFT_DAYS) } },
  });
  return count;
}
