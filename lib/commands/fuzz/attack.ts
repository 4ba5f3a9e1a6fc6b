import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { z } from 'zod';
import { routes } from '@/e2e/world/routes';
import { bytesOf } from './bytes';
import { crawl, startedDraft } from './crawl';
import { faultOf } from './judge';
import { brokenRules, digests } from './kept';
import { findPlaces } from './places';
import { hostileRequest, type Plan } from './requests';
import { send } from './send';
import { keepStaff, type Person, STAFF, signIn } from './staff';

export type Attack = { origin: string; hasEnded: () => boolean; wanted: number; seed: number };

const AT_ONCE = 8;
const CHUNK = 250;

/** What each caller may leave behind in tables; everything else has to stay as it was, row for row. */
const MAY_WRITE: Record<string, readonly string[]> = {
  nobody: [
    ...['attempt', 'booking_draft', 'auth_session', 'auth_verification', 'auth_two_factor'],
    // What a customer does with a booking or a private link: this and what follows from it by itself.
    ...['customer', 'job', 'accessory', 'job_event', 'private_link', 'photo', 'message', 'mail', 'seen_by'],
    ...['quote', 'quote_request', 'quote_event', 'quote_revision', 'quote_line', 'claim', 'held_interval'],
  ],
};

const manifest = z.object({
  node: z.record(z.string(), z.object({ exportedName: z.string(), filename: z.string() })),
});

/** Sends the hostile requests, half of them as nobody, and returns every kind of fault once, with its count and an example. */
export async function attack(o: Attack): Promise<string[]> {
  const { node: actions } = manifest.parse(
    JSON.parse(readFileSync('.next/server/server-reference-manifest.json', 'utf8')),
  );
  const places = { ...(await findPlaces()), draft: await startedDraft(o.origin) };
  const faults = new Map<string, { count: number; example: string }>();
  const blame = (what: string, example = '') => {
    const known = faults.get(what);
    faults.set(what, { count: (known?.count ?? 0) + 1, example: known?.example ?? example });
  };
  const restore = await keepStaff();
  const callers: [string, Person | null, number][] = [
    ['nobody', null, 0.5],
    ...STAFF.map((person): [string, Person, number] => [person.role, person, 0.5 / STAFF.length]),
  ];
  const counts = new Map<number, number>();
  let sentSoFar = 0;
  for (const [name, person, share] of callers) {
    let cookie = person ? await signIn(o.origin, person) : '';
    const forms = await crawl(o.origin, { places, cookie });
    const plans = hostileRequest({ routes, places, forms, actionIds: Object.keys(actions).sort() });
    const before = await digests();
    const began = performance.now();
    for (let left = Math.round(o.wanted * share), part = 0; left > 0; left -= CHUNK, part += 1) {
      if (person) cookie = await stillSignedIn(o.origin, cookie, person, restore);
      const chunk = fc.sample(plans, { numRuns: Math.min(CHUNK, left), seed: o.seed + part });
      await inParallel(chunk, async (plan) => {
        sentSoFar += 1;
        const address = `198.51.100.${sentSoFar % 250}`;
        const answer = await send(o.origin, bytesOf(plan, { origin: o.origin, cookie, address }));
        if ('status' in answer) counts.set(answer.status, (counts.get(answer.status) ?? 0) + 1);
        const fault = faultOf(answer);
        if (fault) blame(`${fault}: ${name}, ${aimedAt(plan, actions)}`, exampleOf(plan));
      });
      if (o.hasEnded()) throw new Error(`The app ended while ${name} asked, after ${sentSoFar} requests.`);
    }
    console.log(
      `${name}: ${Math.round(o.wanted * share)} requests, ${forms.length} forms known, ${Math.round((performance.now() - began) / 1000)} s`,
    );
    const may = MAY_WRITE[name];
    if (may) {
      for (const [table, digest] of await digests()) {
        if (digest !== before.get(table) && !may.includes(table))
          blame(`${name} has changed the table ${table}`, `${before.get(table)} -> ${digest}`);
      }
    }
  }
  await restore();
  for (const fault of await brokenRules()) blame(fault);
  for (const fault of await stillWorks(o.origin)) blame(fault);
  console.log(
    `answers by status: ${[...counts]
      .sort(([a], [b]) => a - b)
      .map(([status, count]) => `${status} ${count}`)
      .join(', ')}`,
  );
  return [...faults].map(([what, { count, example }]) => `${what} (${count}) ${example}`);
}

async function inParallel<T>(items: readonly T[], work: (item: T) => Promise<void>): Promise<void> {
  const queue = items.values();
  await Promise.all(
    Array.from({ length: AT_ONCE }, async () => {
      for (const item of queue) await work(item);
    }),
  );
}

// Among what the owner sends are forms that end sessions, take roles away and set passwords.
async function stillSignedIn(
  origin: string,
  cookie: string,
  person: Person,
  restore: () => Promise<void>,
): Promise<string> {
  const answer = await send(origin, { method: 'GET', path: '/workshop', headers: { cookie } });
  if ('status' in answer && answer.status === 200) return cookie;
  await restore();
  return signIn(origin, person);
}

/** After everything: the owner gets in, and what everybody needs is answered. */
async function stillWorks(origin: string): Promise<string[]> {
  const owner = STAFF.find(({ role }) => role === 'owner');
  const cookie = owner ? await signIn(origin, owner) : '';
  const faults: string[] = [];
  for (const path of [
    '/',
    '/prices',
    '/quote/ask',
    '/track',
    '/ready',
    '/workshop',
    '/workshop/jobs',
    '/workshop/money',
    '/workshop/parts',
    '/workshop/catalogue',
    '/workshop/catalogue/file/catalogue.csv',
    '/workshop/parts/order/order.csv',
    '/workshop/mail',
    '/workshop/people',
    '/workshop/settings',
  ]) {
    const answer = await send(origin, { method: 'GET', path, headers: { cookie } });
    if (!('status' in answer) || answer.status !== 200)
      faults.push(`afterwards ${path} answers ${'status' in answer ? answer.status : answer.fault}`);
  }
  return faults;
}

function aimedAt(plan: Plan, actions: Record<string, { exportedName: string; filename: string }>): string {
  const action = actions[plan.actionId];
  if (action) return `${plan.kind}, ${action.exportedName} in ${action.filename}`;
  const path = plan.path.split('?')[0] ?? '';
  return `${plan.method} ${path
    .split('/')
    .map((part) => (part.length > 20 || /[%\d]/.test(part) ? '…' : part))
    .join('/')}`;
}

function exampleOf(plan: Plan): string {
  return JSON.stringify({
    ...plan,
    parts: plan.parts.map(({ name, value, file }) => [
      name.slice(0, 60),
      value.slice(0, 60),
      ...(file ? ['a file'] : []),
    ]),
    path: plan.path.slice(0, 200),
  }).slice(0, 1500);
}
