import { db } from '@/lib/db/client';
import { newestQuoteToken, newestTokenOf } from '@/lib/jobs/private-link';

/** Puts what the demonstration holds into the places of a path; throws when it holds no such thing. */
export async function fillPlaces(path: string): Promise<string> {
  let filled = path;
  for (const [place, kind = '', which = ''] of path.matchAll(/\{(\w+)(?::([\w-]+))?\}/g)) {
    const found = await find(kind, which);
    if (!found) throw new Error(`The demonstration holds nothing for ${place}`);
    filled = filled.replace(place, found);
  }
  return filled;
}

async function find(kind: string, which: string): Promise<string | null | undefined> {
  switch (kind) {
    case 'link':
      return newestTokenOf((await newestJob(which))?.id ?? '');
    case 'job':
      return (await newestJob(which))?.number;
    case 'quoteLink':
      return newestQuoteToken(db, (await newestRequest(which))?.id ?? '');
    case 'quote':
      return (await newestRequest(which))?.number;
    case 'certificate':
      return (await db.certificate.findFirst({ select: { number: true }, orderBy: { issuedAt: 'desc' } }))
        ?.number;
    case 'terms':
      return (await db.termsText.findFirst({ select: { id: true }, orderBy: { firstAgreedAt: 'asc' } }))?.id;
    case 'model':
      return (await db.model.findFirst({ select: { slug: true }, orderBy: { slug: 'asc' } }))?.slug;
    case 'person':
      return (await db.user.findFirst({ select: { id: true }, orderBy: { name: 'asc' } }))?.id;
    case 'repair':
      return (await returnedJob())?.repairId;
    case 'lot':
      return (
        await db.partUse.findFirst({ select: { lotId: true }, orderBy: { lot: { receivedOn: 'asc' } } })
      )?.lotId;
    default:
      return undefined;
  }
}

/** A job whose unit came back and whose claim taught something: its repair has every part of its page to show. */
async function returnedJob() {
  const claim = await db.claim.findFirst({
    where: { ruling: 'covered', lesson: { not: null } },
    select: { certificate: { select: { job: { select: { repairId: true } } } } },
    orderBy: { openedAt: 'asc' },
  });
  return claim?.certificate.job;
}

function newestJob(which: string) {
  return db.job.findFirst({
    where: which === 'claim' ? { kind: 'claim' } : { stage: which },
    select: { id: true, number: true },
    orderBy: { bookedAt: 'desc' },
  });
}

function newestRequest(state: string) {
  return db.quote.findFirst({
    where: { request: { state } },
    select: { id: true, number: true },
    orderBy: { request: { askedAt: 'desc' } },
  });
}
