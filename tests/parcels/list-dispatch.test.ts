import { beforeAll, describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import type { Handover } from '@/lib/jobs/rules/handover';
import { listDispatch } from '@/lib/parcels/list-dispatch';
import { dispatch } from '@/lib/warranty/dispatch';
import { useDatabase } from '@/tests/database';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { makeReady } from './ready';

useDatabase();

const NOW = new Date('2026-11-25T10:00:00Z');
// The workshop is in London: 00:30 in summer time there is the evening before in UTC.
const LATE = new Date('2026-06-30T23:30:00Z');

let paid: { number: string };
let unpaid: { number: string };
let sent: { number: string; jobId: string };
let fetched: { number: string; jobId: string };
let sentLate: { number: string; jobId: string };

async function send(jobId: string, carrier: string | null, now: Date) {
  const { version } = await jobNow(jobId);
  const handover: Handover = carrier
    ? { by: 'carrier', carrier, carrierReference: 'A-1' }
    : { by: 'collected' };
  await dispatch({ jobId, version, handover, postage: 0, actor: BENCH, now });
}

beforeAll(async () => {
  const world = await makeWorkshop(new Date('2026-06-01T10:00:00Z'));
  paid = await makeReady(world, NOW, { serial: 'HW2-10001-A' });
  unpaid = await makeReady(world, NOW, { serial: 'HW2-10002-A', isPaid: false });
  sent = await makeReady(world, NOW, { serial: 'HW2-10003-A' });
  sentLate = await makeReady(world, LATE, { serial: 'HW2-10004-A' });
  await send(sent.jobId, 'Harbour Post', NOW);
  await send(sentLate.jobId, 'Fenroad Carriers', LATE);
  fetched = await makeReady(world, NOW, { serial: 'HW2-10005-A' });
  await send(fetched.jobId, null, NOW);
}, 60_000);

describe('what goes back today', () => {
  it('is what is ready and paid; what is not paid waits, with what is owed', async () => {
    const list = await listDispatch({ now: NOW });
    expect(list.today).toBe('2026-11-25');
    expect(list.mayGo.map((row) => row.number)).toEqual([paid.number]);
    expect(list.waits).toMatchObject([{ number: unpaid.number, owed: 7200 }]);
  });

  it('names what was sent today by carrier, and nothing of another day', async () => {
    const list = await listDispatch({ now: NOW });
    expect(list.sent).toMatchObject([
      { carrier: 'Harbour Post', rows: [{ number: sent.number, reference: 'A-1' }] },
    ]);
  });

  it('counts what customers collected apart: it is on no carrier’s list', async () => {
    const list = await listDispatch({ now: NOW });
    expect(list.collected.map((row) => row.number)).toEqual([fetched.number]);
    expect(list.sent.map(({ carrier }) => carrier)).toEqual(['Harbour Post']);
  });

  it('counts days where the workshop is, not in UTC', async () => {
    const on = async (text: string) => (await listDispatch({ now: NOW, day: day(text) })).sent;
    expect(await on('2026-07-01')).toMatchObject([{ rows: [{ number: sentLate.number }] }]);
    expect(await on('2026-06-30')).toEqual([]);
  });
});
