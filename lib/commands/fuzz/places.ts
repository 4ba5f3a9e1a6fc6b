import { db } from '@/lib/db/client';
import { newestQuoteToken, newestTokenOf } from '@/lib/jobs/private-link';

export type Places = Record<string, string[]>;

/** For each place of the table of routes a few things that the workshop really holds, at most `most`. */
export async function findPlaces(most: number): Promise<Places> {
  const all = Object.entries(await everyPlace());
  return Object.fromEntries(all.map(([place, things]) => [place, things.slice(0, most)]));
}

async function everyPlace(): Promise<Places> {
  const jobs = await db.job.findMany({
    select: { id: true, number: true, stage: true },
    orderBy: { bookedAt: 'desc' },
  });
  // The first there was of each stage, which has forms of its own, and what the callers booked last.
  const each = [...new Set([...new Map(jobs.map((job) => [job.stage, job])).values(), ...jobs.slice(0, 2)])];
  const links = await Promise.all(each.map((job) => newestTokenOf(job.id)));
  const quotes = await db.quote.findMany({
    where: { request: { isNot: null } },
    select: { id: true, number: true, request: { select: { state: true } } },
    orderBy: { request: { askedAt: 'desc' } },
  });
  const eachQuote = [
    ...new Set([
      ...new Map(quotes.map((quote) => [quote.request?.state, quote])).values(),
      ...quotes.slice(0, 2),
    ]),
  ];
  const quoteLinks = await Promise.all(eachQuote.map((quote) => newestQuoteToken(db, quote.id)));
  const [models, repairs, parts, lots, photos, mails, users, claims, checks] = await Promise.all([
    db.model.findMany({ select: { id: true, slug: true }, take: 3 }),
    db.repair.findMany({ select: { id: true }, take: 3 }),
    db.part.findMany({ select: { id: true }, take: 3 }),
    db.lot.findMany({ select: { id: true }, take: 3 }),
    db.photo.findMany({ select: { id: true }, take: 3 }),
    db.mail.findMany({ select: { id: true }, take: 3 }),
    db.user.findMany({ select: { id: true }, take: 6 }),
    db.claim.findMany({ select: { number: true }, orderBy: { number: 'desc' }, take: 6 }),
    db.check.findMany({ select: { id: true }, take: 3 }),
  ]);
  const [certificates, invoices, families, policies, carriers] = await Promise.all([
    db.certificate.findMany({ select: { id: true, number: true }, take: 3 }),
    db.invoice.findMany({ select: { number: true }, take: 3 }),
    db.family.findMany({ select: { id: true }, take: 2 }),
    db.policy.findMany({ select: { id: true }, take: 2 }),
    db.carrier.findMany({ select: { id: true }, take: 2 }),
  ]);
  const ids = (rows: { id: string }[]) => rows.map(({ id }) => id);
  const numbers = (rows: { number: string }[]) => rows.map(({ number }) => number);
  return {
    job: numbers(each),
    connectorJob: numbers(each),
    connectorCheck: ids(checks),
    link: links.filter((link) => link !== null),
    quote: numbers(eachQuote),
    quoteLink: quoteLinks.filter((link) => link !== null),
    certificate: numbers(certificates),
    certificateFile: ids(certificates),
    invoice: numbers(invoices),
    claim: numbers(claims),
    modelSlug: models.map(({ slug }) => slug),
    model: ids(models),
    repair: ids(repairs),
    part: ids(parts),
    lot: ids(lots),
    photo: ids(photos),
    quotePhoto: ids(photos),
    mail: ids(mails),
    person: ids(users),
    family: ids(families),
    policy: ids(policies),
    carrier: ids(carriers),
  };
}
