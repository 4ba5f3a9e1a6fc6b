import { readFileSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import fc from 'fast-check';
import { z } from 'zod';
import { routes } from '@/e2e/world/routes';
import { bytesOf } from './bytes';
import { crawl, startedDraft } from './crawl';
import { faultOf } from './judge';
import { brokenRules, digests, forbiddenChanges } from './kept';
import { findPlaces } from './places';
import { countReach } from './reach';
import { hostileRequest, type Plan } from './requests';
import { type Answer, inParallel, send } from './send';
import { keepStaff, type Person, STAFF, signIn } from './staff';

export type Attack = {
  origin: string;
  hasEnded: () => boolean;
  /** asked between requests: no further one is sent */
  isStopped: () => boolean;
  wanted: number;
  seed: number;
};

const ROUND = 5000;

type Caller = [name: string, person: Person | null, share: number];
/** For fewer requests than this, looking through everything would take longer than they do. */
const FEW = 1000;
/** From so many requests on, an address or an action that none was for is a fault of this program. */
const ENOUGH_FOR_ALL = 10_000;

const manifest = z.object({
  node: z.record(z.string(), z.object({ exportedName: z.string(), filename: z.string() })),
});

/**
 * Sends the hostile requests, half of them as nobody, and returns every kind of fault once, with its count and an example.
 * Each caller looks through the app before a round of requests: what was stored must not break a page, and forms go stale by
 * what is done with them.
 */
export async function attack(o: Attack): Promise<string[]> {
  const { node: actions } = manifest.parse(
    JSON.parse(readFileSync('.next/server/server-reference-manifest.json', 'utf8')),
  );
  const faults = new Map<string, { count: number; example: string }>();
  const blame = (what: string, example = '') => {
    const known = faults.get(what);
    // Told as it comes too: a run takes long.
    if (!known) console.log(`fault: ${what} ${example}`);
    faults.set(what, { count: (known?.count ?? 0) + 1, example: known?.example ?? example });
  };
  const names = Object.entries(actions).map(([id, { exportedName, filename }]): [string, string] => [
    id,
    `${filename.replace(/^app|\/\([a-z]+\)|\/[a-z-]*actions\.ts$/g, '')} ${exportedName}`,
  ]);
  const reach = countReach(
    routes.map(({ path }) => path),
    new Map(names),
  );
  const restore = await keepStaff();
  const callers: Caller[] = [
    ['nobody', null, 0.5],
    ...STAFF.map((person): Caller => [person.role, person, 0.5 / STAFF.length]),
  ];
  const counts = new Map<number, number>();
  let sentSoFar = 0;

  async function sendAs([name, person, share]: Caller, round: number): Promise<void> {
    let cookie = person ? await signInAgain(o.origin, '', person, restore) : '';
    let renewal: Promise<void> | null = null;
    const renew = (who: Person) => {
      renewal ??= signInAgain(o.origin, cookie, who, restore).then((fresh) => {
        cookie = fresh;
        renewal = null;
      });
      return renewal;
    };
    const before = await digests();
    const { plans, forms } = await lookThrough(o.origin, {
      cookie,
      actionIds: Object.keys(actions).sort(),
      most: o.wanted < FEW ? 1 : Number.POSITIVE_INFINITY,
      look: (path, answer) => {
        const fault = faultOf(answer);
        if (fault) blame(`${fault}: looking through as ${name}, ${withoutIds(path)}`, path.slice(0, 200));
      },
    });
    const numRuns = Math.round(Math.min(ROUND, o.wanted - round * ROUND) * share);
    await inParallel(fc.sample(plans, { numRuns, seed: o.seed + round }), async (plan) => {
      if (o.isStopped()) return;
      sentSoFar += 1;
      const sent = bytesOf(plan, { origin: o.origin, cookie, address: addressOf(sentSoFar) });
      const answer = await send(o.origin, sent);
      if ('status' in answer) {
        counts.set(answer.status, (counts.get(answer.status) ?? 0) + 1);
        reach.note(plan, answer);
        // Among what the owner sends are forms that end sessions, take roles away and set passwords.
        if (person && leadsToSignIn(answer)) await renew(person);
      }
      const fault = faultOf(answer);
      if (fault) blame(`${fault}: ${name}, ${aimedAt(plan, actions)}`, exampleOf(plan));
    });
    if (o.hasEnded()) throw new Error(`The app ended while ${name} asked, after ${sentSoFar} requests.`);
    for (const fault of forbiddenChanges(name, before, await digests())) blame(fault);
    for (const fault of await brokenRules()) blame(`${fault}, after ${name}`);
    console.log(`${sentSoFar} sent; ${name} knew ${forms} forms; ${faults.size} kinds of fault so far`);
  }

  const began = performance.now();
  for (let round = 0; round * ROUND < o.wanted; round += 1)
    for (const caller of callers) if (!o.isStopped()) await sendAs(caller, round);
  console.log(`${sentSoFar} requests in ${Math.round((performance.now() - began) / 1000)} s`);
  await restore();
  for (const fault of await stillWorks(o.origin)) blame(fault);
  const { lines, missed } = reach.told();
  for (const line of lines) console.log(line);
  if (sentSoFar >= ENOUGH_FOR_ALL) for (const each of missed) blame(`never asked: ${each}`);
  console.log(
    `answers by status: ${[...counts]
      .sort(([a], [b]) => a - b)
      .map(([status, count]) => `${status} ${count}`)
      .join(', ')}`,
  );
  return [...faults].map(([what, { count, example }]) => `${what} (${count}) ${example}`);
}

/** What there is by now, every page that this caller can open, and the requests that can be made of both. */
async function lookThrough(
  origin: string,
  o: {
    cookie: string;
    actionIds: string[];
    /** of each thing so many are looked at */
    most: number;
    look: (path: string, answer: Answer | { fault: string }) => void;
  },
): Promise<{ plans: fc.Arbitrary<Plan>; forms: number }> {
  const places = { ...(await findPlaces(o.most)), draft: await startedDraft(origin) };
  const forms = await crawl(origin, { places, cookie: o.cookie, look: o.look });
  const file = await send(origin, {
    method: 'GET',
    path: '/workshop/catalogue/file/catalogue.csv',
    headers: { cookie: o.cookie },
  });
  const list = 'body' in file && file.status === 200 ? file.body : '';
  return {
    plans: hostileRequest({ routes, places, forms, actionIds: o.actionIds, list }),
    forms: forms.length,
  };
}

/** Callers from everywhere: the limits count by address, and what is behind them is to be reached. */
function addressOf(count: number): string {
  return `2001:db8:${(count % 4000).toString(16)}::1`;
}

/** What hostile callers began may still be counted as tries of the same person after the counts were put back. */
const TRIES = 4;
const BETWEEN_TRIES = 3000;

async function signInAgain(
  origin: string,
  cookie: string,
  person: Person,
  restore: () => Promise<void>,
): Promise<string> {
  if (cookie) {
    const answer = await send(origin, { method: 'GET', path: '/workshop', headers: { cookie } });
    if ('status' in answer && answer.status === 200) return cookie;
  }
  for (let left = TRIES; ; left -= 1) {
    await restore();
    try {
      return await signIn(origin, person);
    } catch (error) {
      if (left === 1) throw error;
      await setTimeout(BETWEEN_TRIES);
    }
  }
}

// To the account where everybody is asked for a second step, which these have not.
function leadsToSignIn({ headers }: Answer): boolean {
  const to = headers['x-action-redirect'] ?? headers['location'] ?? '';
  return /^[^?]*\/workshop\/(sign-in|account#second-step)/.test(to);
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
    '/workshop/catalogue/file/checks.csv',
    '/workshop/catalogue/file/policies.csv',
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
  return `${plan.method} ${withoutIds(plan.path)}`;
}

function withoutIds(path: string): string {
  const [bare = ''] = path.split('?');
  return bare
    .split('/')
    .map((part) => (part.length > 20 || /[%\d]/.test(part) ? '…' : part))
    .join('/');
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
