import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { readMigrations } from '@/lib/db/engine';
import { transaction } from '@/lib/db/transaction';
import { hasFile, readFile } from '@/lib/files/store';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { STAGES } from '@/lib/jobs/rules/stages';
import { readToday } from '@/lib/jobs/today';
import { readNumber } from '@/lib/numbers/job-number';
import { checkSerial } from '@/lib/numbers/serial';
import { ensureFirstOwner } from '@/lib/people/first-owner';
import { verifyPassword } from '@/lib/people/password-hash';
import { passwordProblem } from '@/lib/people/rules/passwords';
import { REQUEST_STATES } from '@/lib/quotes/rules/request-states';
import { coverClock } from '@/lib/returns/cover-clock';
import { readLotFigures } from '@/lib/returns/lot-figures';
import { isFlagged } from '@/lib/returns/rules/evidence';
import { LINES_ASTRAY, UNITS_ASTRAY } from '@/lib/returns/watch-sql';
import { isGenuine } from '@/lib/warranty/genuine';
import { readChain } from '@/lib/warranty/records';
import { CAUSES } from '@/lib/warranty/rules/causes';
import { claimStanding } from '@/lib/warranty/rules/claim-standing';
import { readWorkshop } from '@/lib/workshop/records';
import { DEMO_CARRIERS } from '@/prisma/demo/carriers';
import { DEMO_MODELS } from '@/prisma/demo/catalogue';
import { DEMO_ADDRESSES } from '@/prisma/demo/customers';
import { KNOWN } from '@/prisma/demo/known';
import { seedDemo } from '@/prisma/demo/seed';
import { DEMO_STAFF } from '@/prisma/demo/staff';
import { isDemoWanted } from '@/prisma/demo/unfinished';
import { useDatabase } from '@/tests/database';
import { properWords, writtenTexts } from './written-words';

useDatabase();

const now = new Date('2026-11-25T10:30:00Z');

beforeAll(async () => {
  await ensureFirstOwner();
  await seedDemo({ now });
}, 300_000);

describe('the jobs of the demonstration', () => {
  test('invoices have their numbers in the order of their days, without a gap', async () => {
    const papers = await db.invoice.findMany({ orderBy: [{ year: 'asc' }, { sequence: 'asc' }] });
    const instants = papers.map((paper) => paper.issuedAt.getTime());
    expect(instants).toEqual(instants.toSorted((a, b) => a - b));
    for (const year of new Set(papers.map((paper) => paper.year))) {
      const given = papers.filter((paper) => paper.year === year).map((paper) => paper.sequence);
      expect(given).toEqual(given.map((_, place) => place + 1));
    }
    expect(papers.length).toBeGreaterThan(30);
  });

  test('there is one at every stage, and some hundred and ten in all', async () => {
    const jobs = await db.job.findMany({ select: { stage: true } });
    expect(new Set(jobs.map((job) => job.stage))).toEqual(new Set(STAGES));
    expect(jobs.length).toBeGreaterThanOrEqual(105);
    expect(jobs.length).toBeLessThan(130);
  });

  test('they reach back more than a year and none of them ahead of now', async () => {
    const { _min, _max } = await db.job.aggregate({ _min: { bookedAt: true }, _max: { bookedAt: true } });
    expect(_min.bookedAt?.toISOString().slice(0, 7)).toBe('2025-09');
    expect(_max.bookedAt?.toISOString()).toBe('2026-11-25T10:05:00.000Z');
    expect(await db.jobEvent.count({ where: { at: { gt: now } } })).toBe(0);
    expect(await db.mail.count({ where: { queuedAt: { gt: now } } })).toBe(0);
  });

  test('each history runs forwards without a gap and ends where the job stands', async () => {
    const jobs = await db.job.findMany({
      select: { number: true, stage: true, version: true, events: { orderBy: { version: 'asc' } } },
    });
    for (const { number, stage, version, events } of jobs) {
      expect(
        events.map((event) => event.version),
        number,
      ).toEqual(Array.from({ length: version }, (_, i) => i + 1));
      const times = events.map((event) => event.at.getTime());
      expect(times, number).toEqual(times.toSorted((a, b) => a - b));
      expect(events.findLast((event) => event.toStage !== null)?.toStage, number).toBe(stage);
    }
  });

  test('nobody works on a day the workshop is closed; only customers and the clock do', async () => {
    const closed = new Set((await db.closingDay.findMany()).map((row) => row.day.toISOString().slice(0, 10)));
    const events = await db.jobEvent.findMany({ where: { actorId: { not: null } } });
    expect(events.length).toBeGreaterThan(500);
    for (const { at } of events) {
      expect([0, 6]).not.toContain(at.getUTCDay());
      expect(closed).not.toContain(at.toISOString().slice(0, 10));
    }
  });

  test('no customer has paid more than was agreed, and what went back is paid', async () => {
    const jobs = await db.job.findMany({
      select: {
        number: true,
        stage: true,
        payments: true,
        invoices: true,
        quotes: { select: { revisions: true } },
      },
    });
    for (const { number, stage, ...money } of jobs) {
      const left = balanceOf(money).owed;
      expect(left, number).toBeGreaterThanOrEqual(0);
      if (stage === 'sent-back' || stage === 'closed') expect(left, number).toBe(0);
    }
    // One customer paid twice and got the second payment back.
    expect(await db.payment.count({ where: { amountMinor: { lt: 0 } } })).toBe(1);
    expect(await db.job.count({ where: { stage: 'ready', payments: { none: {} } } })).toBeGreaterThan(1);
    expect(await db.job.count({ where: { stage: 'ready', payments: { some: {} } } })).toBeGreaterThan(1);
  });

  test('each was proved on the sheet of the day it was booked', async () => {
    const sheets = await db.checkSheet.findMany();
    const jobs = await db.job.findMany({ select: { number: true, bookedAt: true, sheet: true } });
    for (const { number, bookedAt, sheet } of jobs) {
      const newest = sheets
        .filter((each) => each.repairId === sheet.repairId && each.createdAt <= bookedAt)
        .toSorted((a, b) => b.version - a.version)[0];
      expect(newest?.id, number).toBe(sheet.id);
    }
    expect(new Set(jobs.map((job) => job.sheet.version))).toEqual(new Set([1, 2]));
  });

  test('every serial fits its model, but for the one that a customer misread', async () => {
    const jobs = await db.job.findMany({ select: { serialTyped: true, model: { select: { slug: true } } } });
    const misfits = jobs.filter(({ serialTyped, model: { slug } }) => {
      const model = DEMO_MODELS.find((each) => each.slug === slug);
      return !model || !checkSerial(serialTyped, { pattern: model.serialPattern, rule: model.serialRule }).ok;
    });
    expect(misfits.map((job) => job.serialTyped)).toEqual([KNOWN.likelyMisread.typed]);
  });

  test('a reading failed, and the one after it passed', async () => {
    const entries = await db.checkEntry.findMany({
      where: { job: { number: KNOWN.provedAgain.job }, reading: { not: null } },
      orderBy: { at: 'asc' },
    });
    expect(entries.slice(0, 2).map((entry) => entry.isPassed)).toEqual([false, true]);
    expect(entries[0]?.checkId).toBe(entries[1]?.checkId);
  });

  test('lots have left what was not used or written off', async () => {
    const lots = await db.lot.findMany({ include: { uses: true } });
    for (const lot of lots) {
      const used = lot.uses.reduce((sum, use) => sum + use.quantity, 0);
      expect(lot.inStock, lot.code).toBe(lot.code === KNOWN.badLot.lot ? 0 : lot.received - used);
      for (const use of lot.uses) expect(use.at >= lot.receivedOn, lot.code).toBe(true);
    }
    expect(lots.find((lot) => lot.code === KNOWN.badLot.lot)?.uses).toHaveLength(7);
    const figures = await readLotFigures(coverClock(await readWorkshop(), now));
    const flagged = figures.filter(({ comparison }) => isFlagged(comparison));
    expect(flagged.map(({ code }) => code)).toEqual([KNOWN.badLot.lot]);
  });
});

describe('claims and certificates of the demonstration', () => {
  test('claims stand in every way they can', async () => {
    const claims = await db.claim.findMany({ include: { job: true } });
    expect(new Set(claims.map((claim) => claim.state))).toEqual(new Set(['open', 'ruled', 'closed']));
    expect(new Set(claims.map(claimStanding))).toEqual(
      new Set(['not-here', 'to-rule', 'second-look', 'contested', 'ruled', 'closed']),
    );
    const final = claims.filter((claim) => claim.state === 'closed');
    expect(new Set(final.map((claim) => claim.ruling))).toEqual(
      new Set(['covered', 'partly', 'not-covered', 'returned-free']),
    );
    const causes = claims.flatMap((claim) => claim.cause ?? []);
    expect(CAUSES.filter((cause) => !causes.includes(cause))).toEqual([]);
    expect(claims.filter((claim) => claim.isLate)).toHaveLength(1);
    expect(claims.filter((claim) => claim.ruling === 'covered').every((claim) => claim.lesson)).toBe(true);
  });

  test('every certificate is genuine and its document is the one that was issued', async () => {
    const numbers = await db.certificate.findMany({ select: { number: true }, distinct: ['number'] });
    for (const { number } of numbers) {
      const chain = await readChain(number);
      for (const revision of chain?.revisions ?? []) {
        expect(await isGenuine(revision), number).toBe(true);
        const bytes = await readFile(revision.fileKey);
        expect(Buffer.from(bytes.subarray(0, 5)).toString(), number).toBe('%PDF-');
        expect(createHash('sha256').update(bytes).digest('hex'), number).toBe(revision.sha256);
        expect(revision.supersededAt === null, number).toBe(revision.id === chain?.inForce.id);
      }
    }
    expect(numbers.length).toBeGreaterThan(30);
  });

  test('a lesson became a check that names its claim', async () => {
    const taught = await db.check.findMany({ where: { lesson: { not: null } }, select: { lesson: true } });
    expect(taught.length).toBeGreaterThan(0);
    expect(new Set(taught.map((check) => check.lesson))).toEqual(new Set([KNOWN.lessonClaim.claim]));
  });
});

describe('prices the demonstration was asked for', () => {
  const standing = () =>
    db.quoteRequest.findMany({
      include: { quote: { include: { events: { orderBy: { version: 'asc' } } } } },
    });

  test('there is one at every state', async () => {
    expect(new Set((await standing()).map(({ state }) => state))).toEqual(new Set(REQUEST_STATES));
  });

  test('each history runs forwards without a gap, none of it ahead of now', async () => {
    for (const { quote } of await standing()) {
      expect(quote.events.map((event) => event.version)).toEqual(
        Array.from({ length: quote.version }, (_, i) => i + 1),
      );
      const times = quote.events.map((event) => event.at.getTime());
      expect(times, quote.number).toEqual(times.toSorted((a, b) => a - b));
      expect(Math.max(...times), quote.number).toBeLessThanOrEqual(now.getTime());
    }
  });

  test('staff answered them on days the workshop is open', async () => {
    const closed = new Set((await db.closingDay.findMany()).map((row) => row.day.toISOString().slice(0, 10)));
    const events = await db.quoteEvent.findMany({ where: { actorId: { not: null } } });
    expect(events.length).toBeGreaterThan(8);
    for (const { at } of events) {
      expect([0, 6]).not.toContain(at.getUTCDay());
      expect(closed).not.toContain(at.toISOString().slice(0, 10));
    }
  });

  test('one waits for its price with photos, one for its answer, and one lapses within days', async () => {
    const { quotes } = await readToday(now);
    expect(quotes.onUs.map(({ quote }) => quote.number)).toEqual([KNOWN.priceAsked.quote]);
    expect(quotes.onUs[0]?.quote.photos).toBeGreaterThan(1);
    expect(quotes.onCustomer.map(({ step }) => step)).toEqual(['lapses-soon', 'not-booked']);
    const sent = await db.quoteRequest.findFirst({ where: { quote: { number: KNOWN.priceSent.quote } } });
    expect(sent?.state).toBe('quoted');
  });

  test('the booked one is a job at the price that was agreed', async () => {
    const { quote, job } = KNOWN.priceBooked;
    const found = await db.quote.findUniqueOrThrow({
      where: { number: quote },
      include: { job: true, revisions: true },
    });
    expect(found.job?.number).toBe(job);
    expect(found.revisions.map(({ state, grossMinor }) => [state, grossMinor])).toEqual([
      ['accepted', 12000],
    ]);
  });
});

describe('the numbers the walks name', () => {
  const stageOf = async (number: string) => (await db.job.findUnique({ where: { number } }))?.stage;

  test.each([
    ['awaitingApproval', 'awaiting-approval'],
    ['readyUnpaid', 'ready'],
    ['readyPaid', 'ready'],
    ['provedAgain', 'proving'],
    ['expected', 'booked'],
    ['likelyMisread', 'arrived'],
    ['otherUnit', 'arrived'],
    ['unclaimed', 'unclaimed'],
  ] as const)('%s is a job that stands at %s', async (key, stage) => {
    const known = KNOWN[key];
    const job = await db.job.findUniqueOrThrow({ where: { number: known.job } });
    expect(job.stage).toBe(stage);
    expect(job.serialTyped).toBe('serial' in known ? known.serial : known.typed);
    if ('read' in known) expect(job.arrivedSerial).toBe(known.read);
    if ('parcel' in known) expect(job.inboundReference.replaceAll(' ', '')).toBe(known.parcel);
  });

  test('the changed price that waits has findings with photos', async () => {
    const job = await db.job.findUniqueOrThrow({
      where: { number: KNOWN.awaitingApproval.job },
      include: {
        findings: { include: { photos: true } },
        quotes: { include: { revisions: { orderBy: { revision: 'asc' } } } },
      },
    });
    expect(job.findings.length).toBeGreaterThan(1);
    expect(job.findings.flatMap((finding) => finding.photos).length).toBeGreaterThan(1);
    expect(job.quotes[0]?.revisions.map((revision) => revision.state)).toEqual(['accepted', 'sent']);
  });

  test.each([
    ['liveCertificate', 1, true],
    ['lapsedCertificate', 1, false],
    ['renewedCertificate', 2, true],
  ] as const)('%s has %i revision(s), covered today: %s', async (key, revisions, isCovered) => {
    const { certificate, serial } = KNOWN[key];
    const chain = await readChain(certificate);
    expect(chain?.inForce.serialTyped).toBe(serial);
    expect(chain?.revisions).toHaveLength(revisions);
    expect(chain && chain.inForce.endsOn > now).toBe(isCovered);
  });

  test.each([
    ['openClaim', 'not-here', 'booked'],
    ['lessonClaim', 'closed', 'closed'],
    ['secondLookClaim', 'second-look', 'assessing'],
    ['contestedClaim', 'contested', 'assessing'],
    ['lateClaim', 'to-rule', 'arrived'],
  ] as const)('%s stands at %s, its job at %s', async (key, standing, stage) => {
    const known = KNOWN[key];
    const claim = await db.claim.findUniqueOrThrow({
      where: { number: known.claim },
      include: { job: true },
    });
    expect(claimStanding(claim)).toBe(standing);
    expect([claim.job.number, claim.certificateNumber]).toEqual([known.job, known.certificate]);
    expect(await stageOf(known.job)).toBe(stage);
    expect(claim.isLate).toBe(key === 'lateClaim');
  });

  test('all numbers can be read', () => {
    for (const known of Object.values(KNOWN)) {
      for (const [name, text] of Object.entries(known)) {
        if (['job', 'claim', 'certificate', 'quote'].includes(name))
          expect(readNumber(text).ok, text).toBe(true);
      }
    }
  });
});

describe('everybody and everything is invented', () => {
  test('customers, models, suppliers and carriers come from the lists of the demonstration', async () => {
    const customers = await db.customer.findMany({ select: { name: true, email: true, phone: true } });
    expect(new Set(customers.map((each) => each.name)).size).toBeGreaterThanOrEqual(30);
    for (const { name, email, phone } of customers) {
      expect(DEMO_ADDRESSES.map((each) => each.name)).toContain(name);
      // RFC 2606 section 3 keeps these domains for examples.
      expect(email).toMatch(/@example\.(org|com|net)$/);
      // Ofcom keeps these numbers for drama: 01632 960000 to 960999 and 07700 900000 to 900999 (from memory).
      expect(phone).toMatch(/^(01632 960\d{3}|07700 900\d{3}|)$/);
    }
    const models = DEMO_MODELS.map((model) => `${model.maker} ${model.name}`);
    for (const { modelName } of await db.certificate.findMany()) expect(models).toContain(modelName);
    const suppliers = await db.lot.groupBy({ by: ['supplier'] });
    expect(suppliers.map((group) => group.supplier).toSorted()).toEqual([
      'Harbour Components',
      'Lightship Electronic Supply',
      'Nesbrook Parts',
    ]);
    const carriers = await db.job.groupBy({ by: ['carrier'], where: { carrier: { not: '' } } });
    for (const { carrier } of carriers) expect(DEMO_CARRIERS.map((each) => each.name)).toContain(carrier);
  });

  test('customers live in more than eight countries, some with letters that English does not have', async () => {
    const customers = await db.customer.findMany({ select: { name: true, country: true } });
    expect(new Set(customers.map((each) => each.country)).size).toBeGreaterThan(8);
    expect(customers.filter(({ name }) => /[^ -~]/.test(name)).length).toBeGreaterThan(10);
  });

  test('no text names anything else', async () => {
    const known = new Set(
      [
        ...DEMO_MODELS.map((model) => `${model.maker} ${model.name}`),
        'Ostrel Whelk tape echo',
        'Quay & Alder, Rowan Alder, the Net Loft, Slip Lane',
        'the United Kingdom, Ireland and the countries of the European Union',
        'Monday Friday USB NB OS GB mAh W A B C I V',
      ].flatMap((text) => text.split(/[ ,&]+/)),
    );
    const texts = await writtenTexts();
    expect(texts.length).toBeGreaterThan(900);
    const names = new Set(texts.flatMap(properWords));
    expect([...names].filter((name) => !known.has(name))).toEqual([]);
    expect(properWords('It was bought at Brandmark. New cable: Otherbrand.')).toEqual(['Brandmark']);
  });
});

describe('what lies beside the jobs', () => {
  test('no message is left that a mail server could send', async () => {
    const states = await db.mail.groupBy({ by: ['state'] });
    expect(states.map((group) => group.state)).toEqual(['kept']);
    const waiting = await db.$queryRaw<
      { n: number }[]
    >`select count(*)::int as n from pgboss.job where name = 'mail'`;
    expect(waiting).toEqual([{ n: 0 }]);
  });

  test('each photo has files of its own', async () => {
    const photos = await db.photo.findMany();
    expect(photos.length).toBeGreaterThan(100);
    for (const photo of photos) {
      expect(await hasFile(photo.thumbKey)).toBe(true);
      const bytes = await readFile(photo.fileKey);
      expect(createHash('sha256').update(bytes).digest('hex')).toBe(photo.sha256);
    }
  });

  test('returns count every unit and cover line as its records say, and the migrations wrote the same', async () => {
    const astray = async (tx: Pick<typeof db, '$queryRawUnsafe'>) => [
      ...(await tx.$queryRawUnsafe<object[]>(UNITS_ASTRAY)),
      ...(await tx.$queryRawUnsafe<object[]>(LINES_ASTRAY)),
    ];
    expect(await db.lineWatch.count({ where: { returnedOn: { not: null } } })).toBeGreaterThan(5);
    expect(await astray(db)).toEqual([]);
    const { migrationDirectories } = await readMigrations();
    const sqlOf = (name: string) =>
      String(migrationDirectories.find(({ path }) => path.endsWith(name))?.migrationFile.content.value);
    const writesOf = (name: string) =>
      sqlOf(name).match(/^(INSERT INTO|DELETE FROM|UPDATE) "(unit|line)_watch"[^;]+/gm) ?? [];
    const names = [
      'watch_of_what_went_out',
      'returns_by_counted_ends',
      'first_ends_of_returns',
      'blame_of_the_first_return',
      'held_days_of_renewed_lines',
    ];
    const writes = names.flatMap(writesOf);
    expect(writes).toHaveLength(13);
    // How ends were counted before the last of them, which has another one in its place.
    const [countedBefore = ''] =
      sqlOf('returns_by_counted_ends').match(/^CREATE FUNCTION "cover_end"[\s\S]+?^END \$\$;/m) ?? [];
    await transaction(async (tx) => {
      await tx.unitWatch.deleteMany();
      // A column that the first of them did not know yet.
      for (const table of ['unit_watch', 'line_watch'])
        await tx.$executeRawUnsafe(`ALTER TABLE "${table}" ALTER COLUMN "firstEndsOn" DROP NOT NULL`);
      for (const write of [countedBefore, ...writes]) await tx.$executeRawUnsafe(write);
      expect(await astray(tx)).toEqual([]);
      await tx.$executeRawUnsafe('DROP FUNCTION "cover_end"(TEXT, TEXT, DATE, TEXT, DATE)');
    });
  });

  test('staff can sign in with the passwords of the README', async () => {
    const readme = readFileSync('README.md', 'utf8');
    for (const { email, name, role, password } of DEMO_STAFF) {
      expect(readme).toContain(`\`${email}\`, password \`${password}\``);
      const user = await db.user.findUniqueOrThrow({ where: { email }, include: { accounts: true } });
      expect(user.role).toBe(role);
      expect(passwordProblem(password, [name, email, 'Quay & Alder'])).toBeNull();
      expect(await verifyPassword({ hash: user.accounts[0]?.password ?? '', password })).toBe(true);
    }
  });

  test('filling it again changes nothing', async () => {
    const before = [await db.job.count(), await db.mail.count(), await db.user.count()];
    expect(await isDemoWanted()).toBe(false);
    await seedDemo({ now: new Date('2027-03-01T10:00:00Z') });
    expect([await db.job.count(), await db.mail.count(), await db.user.count()]).toEqual(before);
  });
});
