import { beforeEach, describe, expect, it } from 'vitest';
import { day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { factsOf } from '@/lib/jobs/facts';
import { recordFinding } from '@/lib/jobs/record-finding';
import { eventLine } from '@/lib/jobs/rules/events';
import type { ToldBy } from '@/lib/jobs/rules/told';
import { stopRepair } from '@/lib/jobs/stop-repair';
import { awaitedPartsOf } from '@/lib/jobs/stored-awaited-parts';
import { drawMail } from '@/lib/mail/draw';
import { attempt } from '@/lib/outcome';
import { readKept } from '@/lib/promise/stored-kept';
import { approveAfterNo } from '@/lib/quotes/approve-after-no';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { lapsePrices } from '@/lib/quotes/write-lapses';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { assessedJob, versionOf, waitForPart } from '@/tests/makers/course';
import { askPrice, PAD, writePrice } from '@/tests/makers/offer';
import { makeFaderRepair } from '@/tests/makers/second-repair';
import { jobNow, makeCertificate, makeClaim, moveTo, proveJob, ruleClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

/** A Wednesday: five working days on, the promise is Wednesday 2 December; the price holds to the end of Friday 25 December. */
const ASKED = new Date('2026-11-25T09:00:00Z');
/** The lapse puts the 21 working days to the day before Christmas on the promise: Tuesday 5 January. */
const LAPSED = new Date('2026-12-26T06:00:00Z');
const FOUND = new Date('2026-12-28T09:00:00Z');

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let jobId: string;
const begin = madeOnce(async () => {
  const world = await makeWorkshop(ASKED);
  const id = await assessedJob(world, ASKED);
  await askPrice(id, ASKED);
  await lapsePrices(LAPSED);
  return { world, id };
});
beforeEach(async () => {
  ({ world, id: jobId } = await begin());
}, 60_000);

type Over = { on?: string; how?: ToldBy; now?: Date; version?: number; revision?: number };

const answer = async (
  decision: 'accepted' | 'declined',
  { on = '2026-12-18', how = 'telephone', now = FOUND, version, revision = 2 }: Over = {},
) =>
  decideOffer({
    ...{ jobId, revision, decision, actor: OWNER, now },
    told: { how, on: day(on), words: decision === 'accepted' ? 'Yes, go ahead.' : 'No, thank you.' },
    version: version ?? (await versionOf(jobId)),
  });
const refusalOf = async (work: () => Promise<unknown>) => {
  const outcome = await attempt(work);
  return outcome.ok ? 'done' : `${outcome.refusal.field ?? ''} ${outcome.refusal.message}`;
};
const letter = async (template = 'approval-recorded') =>
  (
    await drawMail(await db.mail.findFirstOrThrow({ where: { jobId, template }, orderBy: { id: 'desc' } }))
  ).text.replace(/\s+/g, ' ');
const promised = async () => {
  const { promisedOn } = await jobNow(jobId);
  return promisedOn && dayFromDate(promisedOn);
};

describe('a yes that nobody had written down when its price lapsed', () => {
  it('counts as if the price had not lapsed: the job goes on, and the customer is told that it was our mistake', async () => {
    expect(await promised()).toBe('2027-01-05');
    await answer('accepted');
    const job = await jobNow(jobId);
    expect(job.stage).toBe('on-bench');
    expect(job.quotes[0]?.revisions.map(({ state }) => state)).toEqual(['replaced', 'accepted']);
    expect(agreedOf(job)).toMatchObject({
      grossMinor: 9600,
      decidedBy: 'told',
      agreedText:
        'Told us by telephone on Friday 18 December 2026: I agree to £96.00 with tax for this repair, instead of £72.00.',
    });
    const decided = job.events.find(({ kind }) => kind === 'offer-decided');
    expect(decided).toMatchObject({ fromStage: 'assessing', toStage: 'on-bench', actorId: OWNER.id });
    expect(decided && eventLine(decided.kind, decided.data)).toBe(
      'Changed price accepted (revision 2), told by telephone: “Yes, go ahead.”',
    );
    const text = await letter();
    expect(text).toContain('You told us by telephone on Friday 18 December 2026');
    expect(text).toContain('That was a mistake of ours: your answer came in time, and it counts.');
    expect(text).toContain('Your answer had come in time: the job waited 17 working days for it.');
    expect(text).not.toContain('not ready to go back any more');
  });

  it('gets the promise that it would have had', async () => {
    await answer('accepted');
    // 17 working days from 25 November to 18 December, counted on from 2 December over Christmas.
    expect(await promised()).toBe('2026-12-29');
  });

  it('keeps the one of the lapse where that has passed meanwhile', async () => {
    await answer('accepted', { on: '2026-11-30' });
    expect(await promised()).toBe('2027-01-05');
  });

  it('told in a letter was not waited for after the lapse, however late it is written down, and nobody was mistaken', async () => {
    await moveTo(jobId, 'start-bench', FOUND);
    await answer('accepted', { how: 'letter', now: new Date('2026-12-31T09:00:00Z') });
    expect(await promised()).toBe('2027-01-05');
    const text = await letter();
    expect(text).toContain('You told us in a letter of Friday 18 December 2026');
    expect(text).toContain('Your letter was posted while it was held, so it counts');
    expect(text).not.toMatch(/mistake|sorry|had come in time|waited/);
  });

  it('is written down for days on which the price was held, and for no other', async () => {
    expect(await refusalOf(() => answer('accepted', { on: '2026-12-26' }))).toBe(
      'on Enter the day they told us: Friday 25 December 2026 or before. The price was held until then',
    );
    expect(await refusalOf(() => answer('declined', { on: '2026-12-26' }))).toMatch(/^on Enter the day/);
    expect(await refusalOf(() => answer('accepted', { on: '2026-11-24' }))).toMatch(/or after$/);
    expect((await jobNow(jobId)).stage).toBe('assessing');
    expect(await refusalOf(() => answer('accepted', { on: '2026-12-25' }))).toBe('done');
  });

  it('sent twice is one yes', async () => {
    await answer('accepted');
    await answer('accepted', { version: 1 });
    expect(await db.mail.count({ where: { jobId, template: 'approval-recorded' } })).toBe(1);
  });

  it('is not pressed by the customer, who is asked anew', async () => {
    const pressed = () => decideOffer({ jobId, revision: 2, decision: 'accepted', now: FOUND });
    expect(await refusalOf(pressed)).toMatch(/answered or replaced already/);
  });

  it('is refused where it would make the contract', async () => {
    await db.job.update({ where: { id: jobId }, data: { termsAcceptedAt: null } });
    expect(await refusalOf(() => answer('accepted'))).toMatch(/^answer This yes would make the contract/);
    expect(await refusalOf(() => answer('declined'))).toBe('done');
  });
});

describe('what has overtaken it', () => {
  it('is a newer price, though nobody was asked for it', async () => {
    await writePrice(jobId, FOUND);
    expect(await refusalOf(() => answer('accepted'))).toMatch(/the job has gone on since/);
    expect(factsOf(await jobNow(jobId)).hasLapsedPrice).toBe(false);
  });

  it('is a unit that goes back unrepaired', async () => {
    const version = await versionOf(jobId);
    await stopRepair({ jobId, version, why: 'cannot-repair', reason: 'Gone.', actor: BENCH, now: FOUND });
    expect(await refusalOf(() => answer('accepted'))).toMatch(/the job has gone on since/);
  });

  it('is whatever a colleague did since the page was opened', async () => {
    const version = await versionOf(jobId);
    await moveTo(jobId, 'start-bench', FOUND);
    expect(await refusalOf(() => answer('accepted', { version }))).toMatch(/changed while you had it open/);
    expect(await refusalOf(() => answer('accepted'))).toBe('done');
  });

  it('is never a price that was not sent', async () => {
    const other = await assessedJob(world, FOUND);
    await recordFinding({ jobId: other, text: 'Pad lifted', photos: [], actor: BENCH, now: FOUND });
    await writePrice(other, FOUND);
    await lapsePrices(new Date('2027-02-20T09:00:00Z'));
    jobId = other;
    const late = { on: '2026-12-29', now: new Date('2027-02-21T09:00:00Z') };
    expect(await refusalOf(() => answer('accepted', late))).toMatch(/the job has gone on since/);
  });
});

it('a yes to more, of a unit that was repaired as first agreed and is packed, opens the work again', async () => {
  await moveTo(jobId, 'start-bench', FOUND);
  await proveJob(jobId, world, FOUND);
  const ready = await jobNow(jobId);
  expect(ready).toMatchObject({ stage: 'ready', invoices: [{ payableMinor: 7200 }] });
  const now = new Date('2026-12-30T09:00:00Z');
  await answer('accepted', { now });
  const job = await jobNow(jobId);
  expect(job).toMatchObject({ stage: 'on-bench', readyAt: null });
  // What was proved is proved again, with the work that was agreed to now.
  expect(factsOf(job)).toMatchObject({ isRepaired: false, workEntries: 0, checksMissing: 2, owed: 9600 });
  expect(job.invoices.map(({ kind, payableMinor }) => [kind, payableMinor])).toEqual([
    ['invoice', 7200],
    ['credit-note', 7200],
    ['invoice', 9600],
  ]);
  // Ready for two working days beside Tuesday 5 January.
  expect(await promised()).toBe('2027-01-07');
  const text = await letter();
  expect(text).toContain('It is not ready to go back any more: we do not post it yet.');
  expect(text).toContain('your answer came in time, and it counts');
});

describe('a job that went on and waits for a part', () => {
  const waited = async () => awaitedPartsOf(await jobNow(jobId)).map(({ name }) => name);
  beforeEach(() => waitForPart(jobId, FOUND));

  it('waits on after a yes: staff and the customer see it, and the bench says when the part is in', async () => {
    await answer('accepted');
    expect((await jobNow(jobId)).stage).toBe('awaiting-parts');
    expect(await waited()).toEqual(['Long display']);
    const text = await letter();
    expect(text).toContain('A part for your unit is on its way to us, and it goes back on the bench when');
    expect(text).not.toContain('Your unit goes back on the bench.');
    await moveTo(jobId, 'parts-in', FOUND);
    expect((await jobNow(jobId)).stage).toBe('on-bench');
  });

  it('waits for it no more after a yes to another repair, which does not take that part', async () => {
    const { repairId } = await makeFaderRepair(world, ASKED);
    jobId = await assessedJob(world, ASKED);
    await askPrice(jobId, ASKED, { repairId });
    await lapsePrices(LAPSED);
    await waitForPart(jobId, FOUND);
    await answer('accepted');
    expect(await jobNow(jobId)).toMatchObject({ stage: 'on-bench', repair: { id: repairId } });
    expect(await db.awaitedPart.count({ where: { jobId } })).toBe(0);
    const text = await letter();
    expect(text).toContain('Your unit goes back on the bench.');
    expect(text).not.toContain('A part for your unit is on its way');
  });

  it('waits on after a yes to a price that names the repair it is under', async () => {
    jobId = await assessedJob(world, ASKED);
    await askPrice(jobId, ASKED, { repairId: world.repairId });
    await lapsePrices(LAPSED);
    await waitForPart(jobId, FOUND);
    await answer('accepted');
    expect((await jobNow(jobId)).stage).toBe('awaiting-parts');
    expect(await waited()).toEqual(['Long display']);
  });

  it.each([
    ['waits for it no more after a no', [], 0],
    ['keeps the turn for what has come, in case the no becomes a yes', ['parts-in'], 1],
  ] as const)('%s', async (_name, moves, kept) => {
    for (const move of moves) await moveTo(jobId, move, FOUND);
    await answer('declined', { on: '2026-12-10' });
    expect((await jobNow(jobId)).stage).toBe('declined');
    expect(await db.awaitedPart.count({ where: { jobId } })).toBe(kept);
  });
});

describe('the share of promises that were kept', () => {
  const kept = async () => readKept(new Date('2027-02-15T09:00:00Z'), await readWorkshop());

  it('counts the extra work of the yes as agreed, not as put off by us', async () => {
    jobId = await assessedJob(world, ASKED);
    await askPrice(jobId, ASKED, { furtherDays: 10 });
    await lapsePrices(LAPSED);
    await answer('accepted');
    expect(await promised()).toBe('2027-01-13');
    await proveJob(jobId, world, new Date('2027-01-12T09:00:00Z'));
    const [month] = await kept();
    expect(month).toMatchObject({ month: '2027-01', kept: 1 });
  });

  it('leaves nothing out that the job was worked on while a letter was on its way', async () => {
    await moveTo(jobId, 'start-bench', FOUND);
    await answer('accepted', { how: 'letter', now: new Date('2027-01-08T09:00:00Z') });
    await proveJob(jobId, world, new Date('2027-01-11T09:00:00Z'));
    const [month] = await kept();
    expect(month).toMatchObject({ month: '2027-01', promises: 1, kept: 0 });
  });

  it('leaves out a unit whose no came in time, however late that was written down', async () => {
    expect((await kept()).map(({ notReady }) => notReady)).toEqual([1]);
    await answer('declined', { now: new Date('2027-01-08T09:00:00Z') });
    expect(await kept()).toEqual([]);
  });
});

describe('a no that nobody had written down when its price lapsed', () => {
  const yes = async (on: string, { how = 'telephone', now = FOUND }: Pick<Over, 'how' | 'now'> = {}) =>
    approveAfterNo({
      ...{ jobId, revision: 2, actor: OWNER, now, version: await versionOf(jobId) },
      told: { how, on: day(on), words: 'I thought again: yes.' },
    });

  it('sends the unit back for the return fee', async () => {
    await answer('declined', { how: 'letter', on: '2026-12-25' });
    const job = await jobNow(jobId);
    expect(job.stage).toBe('declined');
    expect(agreedOf(job)).toMatchObject({ grossMinor: 960, decidedBy: 'told' });
    const text = await letter();
    expect(text).toContain('You told us in a letter of Friday 25 December 2026');
    expect(text).toContain('Your letter was posted while it was held, so it counts');
    expect(text).not.toContain('mistake');
    expect(text).not.toContain('You can still say yes');
  });

  it('is followed by the yes that was told after it, by its own day', async () => {
    await answer('declined', { on: '2026-12-10' });
    expect(await refusalOf(() => yes('2026-12-09'))).toMatch(
      /^on Enter the day .* 10 December 2026 or after/,
    );
    expect(await refusalOf(() => yes('2026-12-18'))).toBe('done');
    expect((await jobNow(jobId)).stage).toBe('on-bench');
    // From 25 November to 18 December, once: what the lapse had put on is counted again by the day of the yes.
    expect(await promised()).toBe('2026-12-29');
    expect(await letter()).toContain('Your answer had come in time: the job waited 17 working days for it.');
  });

  it('is followed by a yes whose day has come meanwhile: the promise stays as the lapse left it', async () => {
    await answer('declined', { on: '2026-12-10' });
    await yes('2026-12-14');
    expect(await promised()).toBe('2027-01-05');
  });

  it('is followed by a yes in a letter: the unit waited for that from the day the no was written down', async () => {
    await answer('declined', { on: '2026-12-10' });
    await yes('2026-12-14', { how: 'letter', now: new Date('2026-12-31T09:00:00Z') });
    // Three working days beside Tuesday 5 January.
    expect(await promised()).toBe('2027-01-08');
    expect(await letter()).toContain('The job waited 3 working days for your answer.');
  });

  it.each([
    ['to the rest of a claim leaves the covered part as it is', false, 'on-bench'],
    ['to the rest of one that waits for a part lets it wait on', true, 'awaiting-parts'],
  ])('%s', async (_name, isWaiting, stage) => {
    const { number } = await makeCertificate(world, ASKED, 'HW2-31007-A');
    const at = new Date('2027-02-01T10:00:00Z');
    const claim = await makeClaim({ number, now: at, serial: 'HW2-31007-A' });
    jobId = claim.jobId;
    await takeIn(jobId, at);
    await moveTo(jobId, 'assess', at);
    await recordFinding({ jobId, text: 'A fader scratches.', photos: [], actor: BENCH, now: at });
    await ruleClaim(claim, { cause: 'workmanship', alsoFound: 'separate-fault', now: at });
    const { revision } = await writePrice(jobId, at, { lines: [{ ...PAD, amount: 6000 }] });
    await moveTo(jobId, 'ask-approval', at);
    await lapsePrices(new Date('2027-03-10T06:00:00Z'));
    expect((await jobNow(jobId)).stage).toBe('assessing');
    if (isWaiting) await waitForPart(jobId, new Date('2027-03-11T08:00:00Z'));
    const told = { revision, on: '2027-02-05', now: new Date('2027-03-11T09:00:00Z') };
    expect(await answer('declined', told)).toBe('rest-declined');
    expect(await jobNow(jobId)).toMatchObject({ stage });
    const text = await letter();
    expect(text).toContain('wrote it down as your no to the rest');
    expect(text.includes('A part for your unit is on its way')).toBe(isWaiting);
  });
});
