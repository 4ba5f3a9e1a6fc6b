import { type Day, dayInZone } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import { readKind, readStage, staffNames } from '@/lib/jobs/records';
import type { JobKind, Stage } from '@/lib/jobs/rules/stages';
import { type RequestState, readRequestState } from '@/lib/quotes/rules/request-states';
import { readWorkshop } from '@/lib/workshop/records';
import { postalLines } from '@/lib/workshop/rules/letterhead';
import { findPerson } from './records';
import type { RemovalFacts } from './rules/retention';
import { listSeen } from './seen';
import { readRemovalFacts } from './stored-removal';

/** Rows of the log shown on a person's page. */
const MOST_SEEN = 100;

export type Contact = {
  name: string;
  email: string;
  phone: string;
  address: string;
  since: Date;
};

export type PersonView = {
  name: string;
  /** empty once their data was removed */
  email: string;
  erasedAt: Date | null;
  /** each way they were written down, the newest first */
  contacts: Contact[];
  jobs: { number: string; kind: JobKind; stage: Stage; unit: string; repair: string; bookedOn: Day }[];
  quotes: { number: string; state: RequestState; device: string; askedOn: Day }[];
  removal: RemovalFacts & { coverUntil: Day | null };
  seen: { id: string; at: Date; who: string; what: string; number: string | null }[];
};

/** Everything the page of one person shows; null when nobody is behind the number. */
export async function readPerson(number: string, now: Date): Promise<PersonView | null> {
  const person = await findPerson(number);
  if (!person) return null;
  const workshop = await readWorkshop();
  const today = dayInZone(now, workshop.timeZone);
  const [customers, jobs, requests, removal, names] = await Promise.all([
    db.customer.findMany({ where: { id: { in: person.customerIds } }, orderBy: { createdAt: 'desc' } }),
    db.job.findMany({
      where: { customerId: { in: person.customerIds } },
      orderBy: { bookedAt: 'desc' },
      select: {
        id: true,
        number: true,
        kind: true,
        stage: true,
        bookedAt: true,
        model: { select: { maker: true, name: true } },
        repair: { select: { name: true } },
      },
    }),
    db.quoteRequest.findMany({
      where: { quoteId: { in: person.quoteIds } },
      orderBy: { askedAt: 'desc' },
      include: { quote: { select: { number: true } } },
    }),
    readRemovalFacts(person, { today, workshop }),
    staffNames(),
  ]);
  const seen = await listSeen({
    email: person.email,
    jobIds: jobs.map(({ id }) => id),
    quoteIds: person.quoteIds,
    take: MOST_SEEN,
  });
  return {
    name: customers[0]?.name ?? requests[0]?.name ?? '',
    email: person.email,
    erasedAt: customers.find((customer) => customer.erasedAt)?.erasedAt ?? null,
    contacts: person.email === '' ? [] : contactsOf(customers, requests),
    jobs: jobs.map((job) => ({
      number: job.number,
      kind: readKind(job.kind),
      stage: readStage(job.stage),
      unit: unitName(job.model),
      repair: job.repair.name,
      bookedOn: dayInZone(job.bookedAt, workshop.timeZone),
    })),
    quotes: requests.map((request) => ({
      number: request.quote.number,
      state: readRequestState(request.state),
      device: request.device,
      askedOn: dayInZone(request.askedAt, workshop.timeZone),
    })),
    removal,
    seen: seen.map(({ userId, ...row }) => ({ ...row, who: names.get(userId)?.name ?? 'somebody who left' })),
  };
}

type CustomerRow = {
  name: string;
  email: string;
  phone: string;
  addressLines: string[];
  postcode: string;
  town: string;
  country: string;
  createdAt: Date;
};
type RequestRow = { name: string; email: string; phone: string; askedAt: Date };

/** The same contact given again is shown once. */
function contactsOf(customers: readonly CustomerRow[], requests: readonly RequestRow[]): Contact[] {
  const all = [
    ...customers.map((row) => ({
      ...pick(row),
      address: postalLines(row, row.country).join(', '),
      since: row.createdAt,
    })),
    ...requests.map((row) => ({ ...pick(row), address: '', since: row.askedAt })),
  ];
  const kept = new Map<string, Contact>();
  for (const contact of all) {
    const key = JSON.stringify([contact.name, contact.email, contact.phone, contact.address]);
    if (!kept.has(key)) kept.set(key, contact);
  }
  return [...kept.values()].sort((a, b) => b.since.getTime() - a.since.getTime());
}

function pick({ name, email, phone }: { name: string; email: string; phone: string }) {
  return { name, email, phone };
}
