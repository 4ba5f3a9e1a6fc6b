import { beforeAll, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { drawMail } from '@/lib/mail/draw';
import { keepParcel } from '@/lib/parcels/keep-parcel';
import { type ParcelFacts, readParcel } from '@/lib/parcels/stored-parcel';
import { dispatch } from '@/lib/warranty/dispatch';
import { writeCarriers } from '@/prisma/demo/carriers';
import { useDatabase } from '@/tests/database';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { makeReady } from './ready';

useDatabase();

const NOW = new Date('2026-11-25T10:00:00Z');
const PACKED: ParcelFacts = { grams: 1250, sides: [300, 200, 155], valueMinor: 24_000, battery: 'fitted' };

let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeAll(async () => {
  world = await makeWorkshop(NOW);
  await transaction(writeCarriers);
}, 60_000);

async function send(jobId: string, o: { carrier: string; parcel?: ParcelFacts }) {
  const { version } = await jobNow(jobId);
  const handover = { by: 'carrier', carrier: o.carrier, carrierReference: 'SP-1' } as const;
  return dispatch({ jobId, version, handover, postage: 0, ...o, actor: BENCH, now: NOW });
}

describe('a packed parcel', () => {
  it('is kept on its job with who said so, and saying it again writes nothing', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-30001-A' });
    const before = await jobNow(jobId);
    expect(readParcel(before)).toEqual({ grams: null, sides: null, valueMinor: null, battery: 'fitted' });
    await keepParcel({ jobId, version: before.version, parcel: PACKED, actor: BENCH, now: NOW });
    const kept = await jobNow(jobId);
    expect(readParcel(kept)).toEqual(PACKED);
    expect(kept.events.at(-1)).toMatchObject({ kind: 'parcel-packed', actorId: BENCH.id });
    await keepParcel({ jobId, version: kept.version, parcel: PACKED, actor: BENCH, now: NOW });
    expect((await jobNow(jobId)).version).toBe(kept.version);
  });

  it('is refused to whoever saw an older version', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-30002-A' });
    const { version } = await jobNow(jobId);
    const stale = keepParcel({ jobId, version: version - 1, parcel: PACKED, actor: BENCH, now: NOW });
    await expect(stale).rejects.toMatchObject({ code: 'conflict' });
  });

  it('remembers that its battery was taken out', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-30003-A' });
    const { version } = await jobNow(jobId);
    await keepParcel({ jobId, version, parcel: { ...PACKED, battery: 'none' }, actor: BENCH, now: NOW });
    expect(readParcel(await jobNow(jobId)).battery).toBe('none');
  });
});

describe('a carrier of the list', () => {
  it.each([
    [{ grams: 20_001 }, 'Too heavy: Sandmouth Post takes up to 20 kg.'],
    [{ sides: [1001, 100, 100] as const }, 'Too long: Sandmouth Post takes sides up to 100 cm.'],
    [{ valueMinor: 50_001 }, 'Worth too much: Sandmouth Post makes good up to £500.00.'],
    [{ battery: 'loose' as const }, 'A battery outside its unit may not fly'],
    [{ battery: 'unsound' as const }, 'may not go by post or parcel carrier'],
  ])('that must not take it is refused at its field: %o', async (change, sentence) => {
    const { jobId } = await makeReady(world, NOW, { serial: `HW2-40${sentence.length}-B` });
    const sent = send(jobId, { carrier: 'sandmouth post', parcel: { ...PACKED, ...change } });
    await expect(sent).rejects.toMatchObject({ code: 'invalid', field: 'carrier' });
    await expect(sent).rejects.toThrow(sentence);
    const after = await jobNow(jobId);
    expect(after).toMatchObject({ stage: 'ready', carrier: '', parcelGrams: null });
    expect(after.certificates).toEqual([]);
  });

  it('takes what is inside its limits, and the parcel is kept with the sending', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-50001-C' });
    await send(jobId, { carrier: 'Fenroad Carriers', parcel: { ...PACKED, battery: 'loose' } });
    const after = await jobNow(jobId);
    expect(after).toMatchObject({ stage: 'sent-back', parcelGrams: 1250, valueMinor: 24_000 });
    expect(after.events.map((event) => event.kind).slice(-2)).toEqual(['parcel-packed', 'sent-back']);
  });

  it('is asked about the parcel as it was kept before', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-50002-C' });
    const { version } = await jobNow(jobId);
    await keepParcel({ jobId, version, parcel: { ...PACKED, grams: 30_000 }, actor: BENCH, now: NOW });
    await expect(send(jobId, { carrier: 'Tern & Tide Parcels' })).rejects.toThrow('up to 25 kg');
  });

  it('need not be one: any name can be typed, as it is', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-50003-C' });
    await send(jobId, { carrier: 'Her brother’s van', parcel: { ...PACKED, battery: 'loose' } });
    expect(await jobNow(jobId)).toMatchObject({ stage: 'sent-back', carrier: 'Her brother’s van' });
  });

  it('is kept as the list spells it, so that it has one hand-over list', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-50004-C' });
    await send(jobId, { carrier: 'sandmouth POST', parcel: PACKED });
    expect(await jobNow(jobId)).toMatchObject({ carrier: 'Sandmouth Post' });
  });

  it('is not asked about a battery that no carrier takes: that is refused under any name', async () => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-50005-C' });
    const sent = send(jobId, { carrier: 'Collected', parcel: { ...PACKED, battery: 'unsound' } });
    await expect(sent).rejects.toMatchObject({ code: 'invalid', field: 'carrier' });
    await expect(sent).rejects.toThrow('may not go by post or parcel carrier');
    expect(await jobNow(jobId)).toMatchObject({ stage: 'ready', carrier: '' });
  });
});

describe('the page of the carrier', () => {
  it('is in the mail to the customer, and absent where the carrier has none', async () => {
    const one = await makeReady(world, NOW, { serial: 'HW2-60001-D' });
    await send(one.jobId, { carrier: 'Sandmouth Post', parcel: PACKED });
    const other = await makeReady(world, NOW, { serial: 'HW2-60002-D' });
    await send(other.jobId, { carrier: 'Fenroad Carriers', parcel: PACKED });
    expect(await sentBackMail(one.jobId)).toContain('https://post.example.org/follow/SP-1');
    expect(await sentBackMail(other.jobId)).not.toContain('example.org/follow');
  });
});

async function sentBackMail(jobId: string): Promise<string> {
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'unit-sent-back' } });
  return (await drawMail(mail)).text;
}
