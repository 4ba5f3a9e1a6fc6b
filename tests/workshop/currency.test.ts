import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { addLot } from '@/lib/bench/add-lot';
import { savePart } from '@/lib/bench/save-part';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { walkIn } from '@/lib/jobs/walk-in';
import { readWorkshop } from '@/lib/workshop/records';
import { saveSettings } from '@/lib/workshop/save-settings';
import { moneyInput } from '@/lib/workshop/settings-input';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeQuote, makeRequest } from '@/tests/makers/quote';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const NOW = new Date('2026-11-25T10:00:00Z');
const MONEY = {
  currency: 'EUR',
  pricesIncludeTax: 'yes',
  taxNumber: '',
  returnFee: '10',
  inspectionFee: '12',
  labourRate: '30',
  approvalDays: '30',
  taxName: 'VAT',
  taxExemptReason: '',
  isInspectionFeeTakenOff: 'yes',
  remindDays: '5',
  dueDays: '14',
  withdrawalRule: 'off',
};

useDatabase();
const world = madeOnce(() => makeWorkshop(NOW));
let made: Awaited<ReturnType<typeof world>>;
beforeEach(async () => {
  made = await world();
}, 60_000);

const choose = async (currency: string) =>
  saveSettings(moneyInput.parse({ ...MONEY, currency }), (await readWorkshop()).updatedAt);
const refused = { code: 'conflict', field: 'currency' };

describe('the currency changes', () => {
  it('while there is a price list, whose figures stay', async () => {
    const before = await db.repair.findMany({ select: { id: true, priceMinor: true } });
    expect(await choose('EUR')).toEqual({ isNewCurrency: true });
    expect(await db.repair.findMany({ select: { id: true, priceMinor: true } })).toEqual(before);
    expect(await readWorkshop()).toMatchObject({ currency: 'EUR', returnFeeMinor: 1000 });
    expect(await choose('EUR')).toEqual({ isNewCurrency: false });
  });

  it('while a price was only asked for, and the request is answered in the new one', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    await choose('EUR');
    expect(await db.quote.findUniqueOrThrow({ where: { id: quoteId } })).toMatchObject({ currency: 'EUR' });
  });

  it('also in the moment in which a price is asked for', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    await choose('EUR');
    await db.quote.update({ where: { id: quoteId }, data: { currency: 'GBP' } });
    await makeQuote({ quoteId, repairId: made.repairId, now: NOW });
    expect(await db.quote.findUniqueOrThrow({ where: { id: quoteId } })).toMatchObject({ currency: 'EUR' });
  });
});

describe('the currency stays', () => {
  it('once a price was sent', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    await makeQuote({ quoteId, repairId: made.repairId, now: NOW });
    await expect(choose('EUR')).rejects.toMatchObject(refused);
    expect(await readWorkshop()).toMatchObject({ currency: 'GBP', returnFeeMinor: 960 });
  });

  it('once a repair was booked, and what else is on the page is saved', async () => {
    await makeBooking({ repairId: made.repairId, now: NOW });
    await expect(choose('EUR')).rejects.toMatchObject(refused);
    await choose('GBP');
    expect(await readWorkshop()).toMatchObject({ currency: 'GBP', returnFeeMinor: 1000 });
  });

  it('once a unit came without a booking', async () => {
    await walkIn({
      customer: {
        name: 'Perran Veale',
        email: 'perran.veale@example.org',
        phone: '',
        address1: '3 Wherry Steps',
        address2: '',
        postcode: 'QM1 2AB',
        town: 'Sandmouth',
        country: 'GB',
      },
      repairId: made.repairId,
      serial: 'HW2-10999-K',
      problem: 'No sound on the left',
      extra: [],
      batteryAnswer: 'healthy',
      photos: [],
      isOtherMatter: false,
      formKey: randomUUID(),
      actor: BENCH,
      now: NOW,
    });
    await expect(choose('EUR')).rejects.toMatchObject(refused);
  });
});

// ISO 4217: the pound has 2 decimals, the yen none, the Kuwaiti dinar 3.
describe('a currency with other decimals', () => {
  const IN_YEN = { ...MONEY, returnFee: '900', inspectionFee: '1200', labourRate: '3000' };
  const yen = async () =>
    saveSettings(moneyInput.parse({ ...IN_YEN, currency: 'JPY' }), (await readWorkshop()).updatedAt);

  it('is refused while prices are kept, which would become a hundred times as much or a tenth', async () => {
    await expect(yen()).rejects.toMatchObject(refused);
    await expect(yen()).rejects.toThrow('JPY has no decimals and GBP has 2 decimals');
    await expect(choose('KWD')).rejects.toThrow('KWD has 3 decimals and GBP has 2 decimals');
  });

  it('is taken with an empty catalogue, unless a lot has a cost or a carrier a limit', async () => {
    await db.$executeRaw`TRUNCATE "family", "policy", "part" CASCADE`;
    const partId = await savePart(null, { code: 'SOC-1', name: 'Socket', term: null, reorderAt: 0 });
    await addLot({
      partId,
      code: 'L-1',
      supplier: 'Harbour Components',
      receivedOn: day('2026-11-20'),
      received: 4,
      unitCostMinor: 250,
    });
    await expect(yen()).rejects.toMatchObject(refused);
    await db.lot.deleteMany();
    const limits = { divisor: 5000, maxGrams: 20_000, longestSideMm: 1200 };
    await db.carrier.create({ data: { name: 'Harbour Post', ...limits, maxValueMinor: 10_000 } });
    await expect(yen()).rejects.toMatchObject(refused);
    await db.carrier.updateMany({ data: { maxValueMinor: 0 } });
    await yen();
    expect(await readWorkshop()).toMatchObject({ currency: 'JPY', returnFeeMinor: 900 });
  });
});
