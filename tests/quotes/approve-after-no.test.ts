import { beforeEach, describe, expect, it } from 'vitest';
import { dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { issueInvoice } from '@/lib/invoices/issue-invoice';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { drawMail } from '@/lib/mail/draw';
import { approveAfterNo } from '@/lib/quotes/approve-after-no';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { useDatabase } from '@/tests/database';
import { assessedJob, proved, takeMove } from '@/tests/makers/course';
import { askPrice, PAD } from '@/tests/makers/offer';
import { jobNow } from '@/tests/makers/walk';
import { makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

/** A Wednesday: five working days on, the promise is Wednesday 2 December; the price holds to the end of Friday 25 December. */
const ASKED = new Date('2026-11-25T09:00:00Z');
const FRIDAY = new Date('2026-11-27T18:00:00Z');
/** The Monday after. */
const MONDAY = new Date('2026-11-30T09:00:00Z');
const LAST_MOMENT = new Date('2026-12-25T23:59:59Z');
const DAY_AFTER = new Date('2026-12-26T00:00:00Z');

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let jobId: string;
const begin = madeOnce(async () => {
  const made = await makeWorkshop(ASKED);
  const id = await assessedJob(made, ASKED);
  await askPrice(id, ASKED);
  return { made, id };
});
beforeEach(async () => {
  ({ made: world, id: jobId } = await begin());
}, 60_000);

const answer = (decision: 'accepted' | 'declined', now = FRIDAY, revision = 2) =>
  decideOffer({ jobId, revision, decision, actor: { kind: 'customer' }, now });
const sayYes = (now = MONDAY, over: { revision?: number; isTermsAccepted?: boolean } = {}) =>
  approveAfterNo({ jobId, revision: 2, now, ...over });
const lastMail = async () =>
  (
    await drawMail(
      await db.mail.findFirstOrThrow({
        where: { jobId, template: 'approval-recorded' },
        orderBy: { id: 'desc' },
      }),
    )
  ).text.replace(/\s+/g, ' ');
const revisions = async () =>
  (await jobNow(jobId)).quotes[0]?.revisions.map(({ state, grossMinor }) => [state, grossMinor]);

describe('a no to a changed price', () => {
  it('becomes a yes to the same price, and the no stays on record', async () => {
    await answer('declined');
    await sayYes();
    expect(await revisions()).toEqual([
      ['replaced', 7200],
      ['declined', 9600],
      ['replaced', 960],
      ['accepted', 9600],
    ]);
    const job = await jobNow(jobId);
    expect(job.stage).toBe('on-bench');
    expect(balanceOf(job).owed).toBe(9600);
    expect(agreedOf(job)).toMatchObject({
      decidedAt: MONDAY,
      decidedBy: 'customer',
      agreedText:
        'I said no to this price before. I now agree to £96.00 with tax for this repair, instead of the unit back unrepaired for £9.60.',
    });
    expect(job.quotes[0]?.revisions[1]?.agreedText).toMatch(/^I decline/);
    const text = await lastMail();
    expect(text).toContain('You said no to revision 2 of the quote, and then yes after all.');
    expect(text).toContain('kept as revision 4');
  });

  it('moves the promise by the days from the question to the yes', async () => {
    await answer('declined');
    await sayYes();
    const { promisedOn } = await jobNow(jobId);
    expect(promisedOn && dayFromDate(promisedOn)).toBe('2026-12-07');
  });

  it('is one yes and one mail, however often the button is sent', async () => {
    await answer('declined');
    await sayYes();
    await sayYes();
    expect(await revisions()).toHaveLength(4);
    expect(await db.mail.count({ where: { jobId, template: 'approval-recorded' } })).toBe(2);
  });

  it('goes on to a proved unit like any other yes', async () => {
    await answer('declined');
    await sayYes();
    await proved(world, jobId, MONDAY);
    expect((await jobNow(jobId)).stage).toBe('ready');
  });

  it('goes on with a repair that was agreed to before', async () => {
    await answer('declined');
    await sayYes();
    expect(await lastMail()).toContain('Thank you, the repair goes on');
  });

  it('begins the repair where an inspection alone was agreed to', async () => {
    const fee = { ...PAD, kind: 'inspection-fee', description: 'Inspection', amount: 1800 } as const;
    await answer('accepted', ASKED);
    await askPrice(jobId, ASKED, { lines: [fee] });
    await answer('accepted', ASKED, 3);
    await askPrice(jobId, ASKED);
    await answer('declined', FRIDAY, 4);
    await sayYes(MONDAY, { revision: 4 });
    const text = await lastMail();
    expect(text).toContain('You said no to revision 4 of the quote, and then yes after all.');
    expect(text).toContain('Your unit goes on the bench.');
    expect(text).not.toMatch(/goes on at|repair goes on|back on the bench/);
  });

  it('has an invoice over the return put right', async () => {
    await issueInvoice({ jobId, actor: OWNER, now: FRIDAY });
    await answer('declined');
    await sayYes();
    const job = await jobNow(jobId);
    expect(job.invoices.map(({ kind, payableMinor }) => [kind, payableMinor])).toEqual([
      ['invoice', 7200],
      ['credit-note', 7200],
      ['invoice', 960],
      ['credit-note', 960],
      ['invoice', 9600],
    ]);
    expect(balanceOf(job).total).toBe(9600);
  });

  it('does so to the end of the last day, and not after it', async () => {
    await answer('declined');
    await expect(sayYes(DAY_AFTER)).rejects.toMatchObject({ code: 'conflict' });
    await sayYes(LAST_MOMENT);
    expect((await jobNow(jobId)).stage).toBe('on-bench');
  });

  it('does so until the unit is packed', async () => {
    await answer('declined');
    await takeMove(jobId, 'pack-unrepaired', MONDAY);
    await expect(sayYes()).rejects.toThrow('packed already');
    expect((await jobNow(jobId)).stage).toBe('ready');
  });

  it('is needed first, and to that price', async () => {
    await expect(sayYes()).rejects.toMatchObject({ code: 'conflict' });
    await answer('declined');
    await expect(sayYes(MONDAY, { revision: 3 })).rejects.toMatchObject({ code: 'conflict' });
    await expect(answer('accepted')).rejects.toMatchObject({ code: 'conflict' });
  });

  it('that was taken back is not sent again from an old page as if it stood', async () => {
    await answer('declined');
    await sayYes();
    await expect(answer('declined', MONDAY)).rejects.toMatchObject({ code: 'conflict' });
  });

  it('is told in its mail until when it can be taken back, and that it cannot be where the price is held no more', async () => {
    await answer('declined');
    const held = await lastMail();
    expect(held).toContain('until the end of Friday 25 December 2026 or until your unit is packed');
    expect(held).not.toContain('no longer applies');
  });

  it('to a price that is held no more says nothing of it', async () => {
    await answer('declined', DAY_AFTER);
    const late = await lastMail();
    expect(late).toContain('That price no longer applies.');
    expect(late).not.toContain('still say yes');
  });
});

it('a yes that makes the contract asks for the terms, after a no as well', async () => {
  await db.job.update({ where: { id: jobId }, data: { termsAcceptedAt: null, promisedOn: null } });
  await answer('declined');
  await expect(sayYes()).rejects.toMatchObject({ field: 'terms' });
  await sayYes(MONDAY, { isTermsAccepted: true });
  const job = await jobNow(jobId);
  expect(job.termsAcceptedAt).toEqual(MONDAY);
  expect(job.promisedOn).not.toBeNull();
  expect(agreedOf(job)?.agreedText).toMatch(/under the terms\.$/);
});
