import { beforeEach, expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { isWorkingDay } from '@/lib/calendar/working';
import { coverCalendar } from '@/lib/warranty/cover-calendar';
import { countCover } from '@/lib/warranty/rules/cover';
import { blankWorkshop } from '@/lib/workshop/card';
import { closeOn, openOn } from '@/lib/workshop/closing-days';
import { isWorkshopSetUp, readCalendar, readWorkshop } from '@/lib/workshop/records';
import { saveSettings } from '@/lib/workshop/save-settings';
import { daysInput, detailsInput, moneyInput, textsInput } from '@/lib/workshop/settings-input';
import { resetDatabase, useDatabase } from '@/tests/database';
import { someLine, someTerms } from '@/tests/warranty/made';

useDatabase();
beforeEach(resetDatabase);

const details = detailsInput.parse({
  name: 'Quay & Alder',
  tagline: 'Portable music electronics, repaired by post',
  addressLines: '3 Alder Slip\nHarbour Row',
  postcode: 'QM1 4QA',
  town: 'Sandmouth',
  country: 'GB',
  email: 'workshop@example.org',
  phone: '01632 960123',
  territory: 'the United Kingdom',
});
const money = {
  currency: 'GBP',
  pricesIncludeTax: 'yes',
  taxNumber: '',
  returnFee: '9.60',
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

test('before the first save there are placeholders, and the first save makes the row', async () => {
  expect(await readWorkshop()).toEqual(blankWorkshop);
  expect(await isWorkshopSetUp()).toBe(false);
  await saveSettings(details, blankWorkshop.updatedAt);
  expect(await isWorkshopSetUp()).toBe(true);
  expect(await readWorkshop()).toMatchObject({
    name: 'Quay & Alder',
    addressLines: ['3 Alder Slip', 'Harbour Row'],
    currency: 'GBP',
    approvalDays: 30,
  });
});

test('each part leaves the others alone', async () => {
  await saveSettings(details, blankWorkshop.updatedAt);
  const { updatedAt } = await readWorkshop();
  await saveSettings(moneyInput.parse(money), updatedAt);
  expect(await readWorkshop()).toMatchObject({
    name: 'Quay & Alder',
    returnFeeMinor: 960,
    inspectionFeeMinor: 1200,
    labourRateMinor: 3000,
  });
});

test('of two owners who save at once the second is told and overwrites nothing', async () => {
  await saveSettings(details, blankWorkshop.updatedAt);
  const { updatedAt } = await readWorkshop();
  await saveSettings({ ...details, name: 'First' }, updatedAt);
  await expect(saveSettings({ ...details, name: 'Second' }, updatedAt)).rejects.toMatchObject({
    code: 'conflict',
  });
  expect((await readWorkshop()).name).toBe('First');
});

test('a closing day stops being a working day at once, and opens again', async () => {
  const workshop = { holidayCountry: 'GB', holidayRegion: 'ENG' };
  // Thursday 3 December 2026; Christmas Day 2026 is a Friday (Banking and Financial Dealings Act 1971 does not list it:
  // it is a common law holiday).
  const thursday = day('2026-12-03');
  expect(isWorkingDay(thursday, await readCalendar(workshop, thursday))).toBe(true);
  const friday = day('2026-12-04');
  await closeOn({ from: thursday, to: friday, name: 'Stocktaking' });
  const closed = await readCalendar(workshop, thursday);
  expect(isWorkingDay(thursday, closed)).toBe(false);
  expect([closed.closed.get(thursday), closed.closed.get(friday)]).toEqual(['Stocktaking', 'Stocktaking']);
  expect(isWorkingDay(day('2026-12-07'), closed)).toBe(true);
  expect(isWorkingDay(day('2026-12-25'), closed)).toBe(false);
  await expect(closeOn({ from: friday, to: thursday, name: 'Stocktaking' })).rejects.toMatchObject({
    field: 'to',
  });
  await openOn({ from: thursday, to: friday });
  expect(isWorkingDay(thursday, await readCalendar(workshop, thursday))).toBe(true);
});

test('the calendar knows the holidays of the region: 30 November is one in Scotland and not in England', async () => {
  // St Andrew's Day Bank Holiday (Scotland) Act 2007.
  const standrews = day('2026-11-30');
  const scotland = await readCalendar({ holidayCountry: 'GB', holidayRegion: 'SCT' }, standrews);
  const england = await readCalendar({ holidayCountry: 'GB', holidayRegion: 'ENG' }, standrews);
  expect(isWorkingDay(standrews, scotland)).toBe(false);
  expect(isWorkingDay(standrews, england)).toBe(true);
});

test('the calendar reaches two years ahead, for ends of long terms', async () => {
  const calendar = await readCalendar({ holidayCountry: 'GB', holidayRegion: 'ENG' }, day('2026-12-03'));
  expect(isWorkingDay(day('2028-12-25'), calendar)).toBe(false);
});

test.each([
  // The day promises look back to from 20 January 2027 lies in 2025, and 26 December 2025 was a bank holiday.
  ['back as far as promises look, in January', '2027-01-20', [], '2025-12-26'],
  // Easter Monday 2029 is 2 April (Easter Sunday 1 April 2029, Book of Common Prayer, Table to find Easter-Day).
  ['at the end of a term of three years', '2026-04-02', [day('2029-04-02')], '2029-04-02'],
  ['into the year after an end that is rolled', '2026-12-30', [day('2031-12-31')], '2032-01-01'],
  ['at an end that is long past', '2026-12-03', [day('2021-12-25')], '2021-12-27'],
] as const)('the calendar reaches %s', async (_, today, also, holiday) => {
  const workshop = { holidayCountry: 'GB', holidayRegion: 'ENG' };
  const calendar = await readCalendar(workshop, day(today), undefined, also);
  expect(isWorkingDay(day(holiday), calendar)).toBe(false);
});

test('a term of three years that ends on a holiday can be claimed until the day after it', async () => {
  const workshop = { holidayCountry: 'GB', holidayRegion: 'ENG' };
  const line = someLine({ startsOn: day('2026-04-02'), term: 'P36M' });
  const terms = someTerms();
  const calendar = await coverCalendar(
    { lines: [line], held: [], terms },
    { workshop, today: day('2026-04-02') },
  );
  // Regulation (EEC, Euratom) 1182/71 Art. 3(4), and Easter Monday as above.
  expect(countCover(line, [], terms, calendar)).toMatchObject({
    end: '2029-04-02',
    lastClaimDay: '2029-04-03',
  });
});

const faults = (
  schema: { safeParse: (input: unknown) => { error?: { issues: { path: PropertyKey[] }[] } | undefined } },
  input: object,
) => schema.safeParse(input).error?.issues.map((issue) => issue.path[0]) ?? [];

test.each([
  ['letters for an amount', { returnFee: 'ten' }, ['returnFee']],
  [
    'more decimals than the currency has',
    { currency: 'JPY', returnFee: '9.60', inspectionFee: '0', labourRate: '0' },
    ['returnFee'],
  ],
  ['decimals of nothing', { currency: 'JPY', returnFee: '0.00', inspectionFee: '0,00', labourRate: '0' }, []],
  ['an amount below zero', { inspectionFee: '-1' }, ['inspectionFee']],
  ['an amount that no column holds', { labourRate: '99999999999' }, ['labourRate']],
  ['a currency that is none', { currency: 'XXX' }, ['currency']],
  ['fewer than 30 days for a price', { approvalDays: '29' }, ['approvalDays']],
  ['nothing', {}, []],
])('money: %s is found', (_name, change, fields) => {
  expect(faults(moneyInput, { ...money, ...change })).toEqual(fields);
});

const days = {
  timeZone: 'Europe/London',
  locale: 'en-gb',
  paper: 'A4',
  holidays: 'GB/ENG',
  capacityMinutesDay: '360',
  promiseAim: '90',
  answerDays: '2',
};

test.each([
  ['a zone that is none', { timeZone: 'Sandmouth' }, ['timeZone']],
  ['an offset instead of a zone', { timeZone: '+01:00' }, ['timeZone']],
  ['a language that is none', { locale: 'not a tag' }, ['locale']],
  ['a region of another country', { holidays: 'GB/BY' }, ['holidays']],
  ['another paper', { paper: 'A5' }, ['paper']],
  ['no bench time', { capacityMinutesDay: '0' }, ['capacityMinutesDay']],
  ['a share of promises that is not offered', { promiseAim: '100' }, ['promiseAim']],
  ['an answer on no day at all', { answerDays: '0' }, ['answerDays']],
  ['nothing', {}, []],
])('days: %s is found', (_name, change, fields) => {
  expect(faults(daysInput, { ...days, ...change })).toEqual(fields);
});

test('days: place and language are kept in their usual spelling', () => {
  expect(daysInput.parse(days)).toMatchObject({
    holidayCountry: 'GB',
    holidayRegion: 'ENG',
    locale: 'en-GB',
  });
  expect(daysInput.parse({ ...days, holidays: 'IE', timeZone: 'UTC' })).toMatchObject({
    holidayCountry: 'IE',
    holidayRegion: '',
  });
});

test.each([
  ['no address', { addressLines: ' \n ' }, ['addressLines']],
  ['no town', { town: '' }, ['town']],
  ['no postcode, which some countries do not have', { postcode: '' }, []],
  ['nowhere where certificates hold', { territory: '' }, ['territory']],
])('details: %s', (_name, change, fields) => {
  const typed = { ...details, addressLines: '3 Alder Slip' };
  expect(faults(detailsInput, { ...typed, ...change })).toEqual(fields);
});

test('texts: lines for packing are kept apart and empty ones dropped', () => {
  const texts = textsInput.parse({ packingText: ' Wrap it twice.\n\n Fill the box. \n' });
  expect(texts.packingText).toEqual(['Wrap it twice.', 'Fill the box.']);
  expect(texts.termsText).toBe('');
});

test('what customers pay by is checked at its field, and kept without spaces', () => {
  const read = moneyInput.parse({
    ...money,
    iban: ' de71 1102 2033 0123 4567 89 ',
    bic: 'bhbldehhxxx',
    payLink: 'https://pay.example.org/{reference}?sum={amount}&in={currency}',
    withdrawalRule: 'eu',
    isInspectionFeeTakenOff: 'no',
  });
  expect(read).toMatchObject({
    iban: 'DE71110220330123456789',
    bic: 'BHBLDEHHXXX',
    payLink: 'https://pay.example.org/{reference}?sum={amount}&in={currency}',
    withdrawalRule: 'eu',
    isInspectionFeeTakenOff: false,
    dueDays: 14,
    remindDays: 5,
  });
  const wrong = (over: Record<string, string>) =>
    moneyInput.safeParse({ ...money, ...over }).error?.issues.map((issue) => issue.path.join('.'));
  expect(wrong({ iban: 'DE72110220330123456789' })).toEqual(['iban']);
  expect(wrong({ bic: 'BHBL' })).toEqual(['bic']);
  expect(wrong({ payLink: 'http://pay.example.org/' })).toEqual(['payLink']);
  expect(wrong({ payLink: 'https://pay.example.org/{total}' })).toEqual(['payLink']);
  expect(wrong({ remindDays: '30' })).toEqual(['remindDays']);
  expect(wrong({ remindDays: '0' })).toEqual(['remindDays']);
  expect(wrong({ dueDays: '-1' })).toEqual(['dueDays']);
  expect(wrong({ withdrawalRule: 'mars' })).toEqual(['withdrawalRule']);
  expect(wrong({ taxName: '' })).toEqual(['taxName']);
});
