import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { book } from '@/lib/jobs/book';
import { saveStep } from '@/lib/jobs/draft';
import { findJobByToken, findQuoteByToken, newestQuoteTokenOf, newestTokenOf } from '@/lib/jobs/private-link';
import { correctAsker } from '@/lib/keeping/correct-asker';
import { correctContact } from '@/lib/keeping/correct-contact';
import { erasePerson } from '@/lib/keeping/erase-person';
import { findPerson } from '@/lib/keeping/records';
import { markBounced } from '@/lib/mail/mark-bounced';
import { startBooking } from '@/lib/quotes/book-quote';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { resetDatabase, useDatabase } from '@/tests/database';
import { versionOf } from '@/tests/makers/course';
import { ADDRESS, makeBooking } from '@/tests/makers/job';
import { ASKED, bookAtQuote, makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');

useDatabase();
beforeEach(resetDatabase);

async function booked() {
  const world = await makeWorkshop(NOW);
  const { jobId, number } = await makeBooking({ repairId: world.repairId, now: NOW });
  const mail = await db.mail.findFirstOrThrow({ where: { jobId } });
  return { jobId, number, mail };
}

const contact = { ...ADDRESS, email: 'maren@holt.example.net', address2: 'Back door' };

describe('putting a contact right', () => {
  it('changes name and address, and sends what came back to the new one', async () => {
    const { jobId, mail } = await booked();
    await db.mail.update({ where: { id: mail.id }, data: { state: 'sent', sentAt: NOW } });
    await markBounced({ mailId: mail.id, note: '550 5.1.1', now: NOW });
    await correctContact({
      jobId,
      version: await versionOf(jobId),
      contact,
      newLink: false,
      actor: BENCH,
      now: NOW,
    });
    const job = await db.job.findUniqueOrThrow({
      where: { id: jobId },
      include: { customer: true, events: { orderBy: { version: 'asc' } } },
    });
    expect(job.customer).toMatchObject({
      email: 'maren@holt.example.net',
      addressLines: ['12 Chandler Row', 'Back door'],
    });
    expect((await db.mail.findUniqueOrThrow({ where: { id: mail.id } })).toAddress).toBe(contact.email);
    // The history says that it was done, by whom, and nothing of the person.
    expect(job.events.at(-1)).toMatchObject({ kind: 'contact-corrected', actorId: BENCH.id, data: {} });
  });

  it('leaves letters that arrived as they were, and loses against another change', async () => {
    const { jobId, mail } = await booked();
    await db.mail.update({ where: { id: mail.id }, data: { state: 'sent', sentAt: NOW } });
    await expect(
      correctContact({ jobId, version: 9, contact, newLink: false, actor: BENCH, now: NOW }),
    ).rejects.toMatchObject({ code: 'conflict' });
    expect((await db.customer.findFirstOrThrow()).email).toBe(ADDRESS.email);
    await correctContact({
      jobId,
      version: await versionOf(jobId),
      contact,
      newLink: false,
      actor: BENCH,
      now: NOW,
    });
    expect((await db.mail.findUniqueOrThrow({ where: { id: mail.id } })).toAddress).toBe(ADDRESS.email);
  });

  it('follows to the request that the job was booked from, so that a copy of the data is whole', async () => {
    const world = await makeWorkshop(NOW);
    const { quoteId, number } = await makeRequest({ now: NOW });
    await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
    await decideQuote({ quoteId, revision: 1, decision: 'accepted', now: NOW });
    const draft = await startBooking({ quoteId, now: NOW });
    const parcel = { accessories: [], otherAccessory: '', battery: 'healthy', data: 'none' as const };
    await saveStep({ token: draft, step: 'parcel', answers: parcel, now: NOW });
    const asked = { ...ADDRESS, name: ASKED.name, email: ASKED.email };
    await saveStep({ token: draft, step: 'address', answers: asked, now: NOW });
    const { token } = await book({ draftToken: draft, shownMinor: 9600, now: NOW });
    const jobId = (await findJobByToken(token))?.jobId ?? '';
    // Another request under the old address, whose job it is not: whoever wrote it may be somebody else.
    const other = await makeRequest({ now: NOW, answers: { device: 'Marram Two', serial: '' } });

    await correctContact({
      jobId,
      version: await versionOf(jobId),
      contact,
      newLink: false,
      actor: BENCH,
      now: NOW,
    });

    const request = await db.quoteRequest.findUniqueOrThrow({ where: { quoteId } });
    expect(request).toMatchObject({
      name: contact.name,
      email: contact.email,
      emailKey: contact.email,
      phone: contact.phone,
    });
    expect(await db.mail.count({ where: { quoteId, toAddress: contact.email } })).toBe(3);
    expect(await db.quoteRequest.findUniqueOrThrow({ where: { quoteId: other.quoteId } })).toMatchObject({
      email: ASKED.email,
    });
    expect(await findPerson(number)).toMatchObject({ email: contact.email, quoteIds: [quoteId] });
  });

  it('shuts every way in that the old address was told, the quote’s too, and mails a new one', async () => {
    const world = await makeWorkshop(NOW);
    const asked = await makeRequest({ now: NOW });
    const other = await makeRequest({ now: NOW, answers: { device: 'Marram Two', serial: '' } });
    await makeQuote({ quoteId: asked.quoteId, repairId: world.repairId, now: NOW });
    const { token } = await bookAtQuote({ quoteId: asked.quoteId, now: NOW });
    const jobId = (await findJobByToken(token))?.jobId ?? '';

    await correctContact({
      jobId,
      version: await versionOf(jobId),
      contact,
      newLink: true,
      actor: BENCH,
      now: NOW,
    });

    expect(await findJobByToken(token)).toBeNull();
    expect(await findQuoteByToken(asked.token)).toBeNull();
    expect(await findQuoteByToken(other.token)).not.toBeNull();
    expect(await findJobByToken((await newestTokenOf(jobId)) ?? '')).toMatchObject({ jobId });
    expect(await newestQuoteTokenOf(asked.quoteId)).not.toBeNull();
    expect(await db.mail.findMany({ where: { template: 'link-renewed' } })).toMatchObject([
      { jobId, toAddress: contact.email },
    ]);
    const last = await db.jobEvent.findFirstOrThrow({ where: { jobId }, orderBy: { version: 'desc' } });
    expect(last).toMatchObject({ kind: 'link-renewed', actorId: BENCH.id });
  });

  it.each([
    ['the address is the same but for its letters', { ...ADDRESS, email: ADDRESS.email.toUpperCase() }, true],
    ['the box is not ticked', contact, false],
  ])('leaves the links where %s', async (_, told, newLink) => {
    const { jobId } = await booked();
    const token = (await newestTokenOf(jobId)) ?? '';
    const version = await versionOf(jobId);
    await correctContact({ jobId, version, contact: told, newLink, actor: BENCH, now: NOW });
    expect(await findJobByToken(token)).toMatchObject({ jobId });
    expect(await db.mail.count({ where: { template: 'link-renewed' } })).toBe(0);
  });

  it('is refused once the data was removed', async () => {
    const { jobId, number } = await booked();
    await db.job.update({ where: { id: jobId }, data: { stage: 'cancelled' } });
    await erasePerson({ number, isCoverConfirmed: false, actor: OWNER, now: NOW });
    const version = await versionOf(jobId);
    await expect(
      correctContact({ jobId, version, contact, newLink: false, actor: BENCH, now: NOW }),
    ).rejects.toMatchObject({
      code: 'conflict',
    });
  });
});

describe('putting right who asked for a price', () => {
  it('changes name and address, and sends what came back to the new one', async () => {
    await makeWorkshop(NOW);
    const { quoteId } = await makeRequest({ now: NOW });
    const other = await makeRequest({ now: NOW, answers: { device: 'Marram Two', serial: '' } });
    const mail = await db.mail.findFirstOrThrow({ where: { quoteId } });
    await db.mail.update({ where: { id: mail.id }, data: { state: 'sent', sentAt: NOW } });
    await markBounced({ mailId: mail.id, note: '550 5.1.1', now: NOW });
    const right = { name: 'Ines Farrow-Holt', email: 'Ines@farrow.example.net', phone: '' };
    const correct = (version: number) =>
      correctAsker({ quoteId, version, contact: right, newLink: false, actor: BENCH, now: NOW });
    const { version } = await quoteNow(quoteId);
    await expect(correct(version + 1)).rejects.toMatchObject({ code: 'conflict' });
    await correct(version);
    const quote = await quoteNow(quoteId);
    expect(quote.request).toMatchObject({ ...right, emailKey: 'ines@farrow.example.net', state: 'asked' });
    expect(quote.events.at(-1)).toMatchObject({ kind: 'contact-corrected', actorId: BENCH.id, data: {} });
    expect((await db.mail.findUniqueOrThrow({ where: { id: mail.id } })).toAddress).toBe(right.email);
    expect((await quoteNow(other.quoteId)).request.email).toBe(ASKED.email);
    expect(await db.mail.count({ where: { quoteId: other.quoteId, toAddress: ASKED.email } })).toBe(1);
    expect(await db.seenBy.count({ where: { quoteId, what: 'corrected' } })).toBe(1);
  });

  it('shuts the link that the old address was told, and mails a new one', async () => {
    await makeWorkshop(NOW);
    const { quoteId, token } = await makeRequest({ now: NOW });
    const right = { name: ASKED.name, email: 'ines@farrow.example.net', phone: '' };
    const { version } = await quoteNow(quoteId);
    await correctAsker({ quoteId, version, contact: right, newLink: true, actor: BENCH, now: NOW });
    expect(await findQuoteByToken(token)).toBeNull();
    expect(await findQuoteByToken((await newestQuoteTokenOf(quoteId)) ?? '')).toMatchObject({ quoteId });
    expect(await db.mail.findMany({ where: { template: 'link-renewed' } })).toMatchObject([
      { quoteId, toAddress: right.email },
    ]);
  });

  it('is refused once a job was booked, whose contact it is then, and once the data was removed', async () => {
    const world = await makeWorkshop(NOW);
    const { quoteId, number } = await makeRequest({ now: NOW });
    await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
    await bookAtQuote({ quoteId, now: NOW });
    const correct = async () => {
      const { version } = await quoteNow(quoteId);
      return correctAsker({ quoteId, version, contact: ASKED, newLink: true, actor: BENCH, now: NOW });
    };
    await expect(correct()).rejects.toThrow('Correct the contact of the job.');
    await db.job.updateMany({ data: { stage: 'cancelled' } });
    await erasePerson({ number, isCoverConfirmed: false, actor: OWNER, now: NOW });
    await expect(correct()).rejects.toThrow('The data of this person was removed.');
  });
});
