import { beforeAll, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { blankWorkshop } from '@/lib/workshop/card';
import { readFirstSteps } from '@/lib/workshop/first-steps';
import { readWorkshop } from '@/lib/workshop/records';
import { firstSteps, mayLack, type StepFacts } from '@/lib/workshop/rules/first-steps';
import { DEMO_WORKSHOP } from '@/prisma/demo/workshop';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeWorkshop } from '@/tests/makers/workshop';

const EMPTY: StepFacts = {
  isBlank: true,
  hasMailServer: false,
  unnamedId: 'user-owner',
  families: 0,
  models: 0,
  policies: 0,
  hasListedRepair: false,
  hasTaxedRepair: false,
  hasJobs: false,
};
const DONE: StepFacts = {
  isBlank: false,
  hasMailServer: true,
  unnamedId: null,
  families: 1,
  models: 1,
  policies: 1,
  hasListedRepair: true,
  hasTaxedRepair: true,
  hasJobs: false,
};

const steps = (settings: Partial<typeof DEMO_WORKSHOP>, facts: Partial<StepFacts>) =>
  firstSteps({ ...DEMO_WORKSHOP, ...settings }, { ...DONE, ...facts }).map(({ key, href }) => [key, href]);
const noPay = { paymentText: '', iban: '', payLink: '' };

describe('before the first booking', () => {
  it('an empty workshop has all of it to do, in this order', () => {
    expect(firstSteps(blankWorkshop, EMPTY).map(({ key }) => key)).toEqual([
      'details',
      'money',
      'days',
      'policy',
      'repair',
      'mail',
      'self',
    ]);
  });

  it('a workshop that is set up has nothing to do', () => {
    expect(steps({}, {})).toEqual([]);
    expect(mayLack(DEMO_WORKSHOP)).toBe(false);
  });

  it.each<[string, Partial<typeof DEMO_WORKSHOP>, Partial<StepFacts>, string, string]>([
    ['no territory', { territory: '' }, {}, 'details', '/workshop/settings/details'],
    ['no way to pay', noPay, {}, 'money', '/workshop/settings/money'],
    ['a taxed repair and no tax number', { taxNumber: '' }, {}, 'tax-number', '/workshop/settings/money'],
    ['holidays of another country', { country: 'IE' }, {}, 'days', '/workshop/settings/days'],
    ['no policy', {}, { policies: 0 }, 'policy', '/workshop/catalogue/policies/new'],
    ['no family', {}, { hasListedRepair: false, families: 0, models: 0 }, 'repair', '/workshop/catalogue'],
    ['no model', {}, { hasListedRepair: false, models: 0 }, 'repair', '/workshop/catalogue/models/new'],
    ['no listed repair', {}, { hasListedRepair: false }, 'repair', '/workshop/catalogue'],
    ['no mail server', {}, { hasMailServer: false }, 'mail', '/workshop/mail'],
    ['an owner without a name', {}, { unnamedId: 'u1' }, 'self', '/workshop/people/u1'],
  ])('%s is one line', (_, settings, facts, key, href) => {
    expect(steps(settings, facts)).toEqual([[key, href]]);
  });

  it('one way to pay is enough, and no number is missed where no repair is taxed', () => {
    for (const way of ['paymentText', 'iban', 'payLink'])
      expect(steps({ ...noPay, [way]: 'given' }, {})).toEqual([]);
    expect(steps({ taxNumber: '' }, { hasTaxedRepair: false })).toEqual([]);
  });

  it('after a job only what customers and papers lack is left', () => {
    const all = firstSteps(
      { ...blankWorkshop, country: 'IE' },
      { ...EMPTY, hasTaxedRepair: true, hasJobs: true },
    );
    expect(all.map(({ key }) => key)).toEqual(['details', 'money', 'tax-number']);
  });
});

describe('as Today reads them', () => {
  useDatabase();
  const NOW = new Date('2026-11-25T10:00:00Z');
  const asking = { hasMailServer: true, unnamedId: null, hasOpenJobs: false };
  const read = async (over: Partial<typeof asking> = {}) => {
    const { steps: found, hasJobs } = await readFirstSteps(await readWorkshop(), { ...asking, ...over });
    return { keys: found.map(({ key }) => key), hasJobs };
  };
  let world: Awaited<ReturnType<typeof makeWorkshop>>;
  beforeAll(async () => {
    world = await makeWorkshop(NOW);
  }, 60_000);

  it('counts what is listed, and only that', async () => {
    expect(await read()).toEqual({ keys: ['tax-number'], hasJobs: false });
    await db.workshop.update({ where: { id: 1 }, data: { taxNumber: 'GB 000 0000 00' } });
    expect(await read()).toEqual({ keys: [], hasJobs: false });
    await db.repair.updateMany({ data: { isListed: false } });
    expect((await read()).keys).toEqual(['repair']);
    await db.repair.updateMany({ data: { isListed: true } });
    await db.model.updateMany({ data: { isListed: false } });
    expect((await read()).keys).toEqual(['repair']);
    await db.model.updateMany({ data: { isListed: true } });
  });

  it('a job ends what comes before the first one', async () => {
    await makeBooking({ repairId: world.repairId, now: NOW });
    await db.repair.updateMany({ data: { isListed: false } });
    expect(await read({ hasMailServer: false })).toEqual({ keys: [], hasJobs: true });
  });
});
