import { routes } from '@/e2e/world/routes';
import { bytesOf } from './bytes';
import { type FoundForm, formsIn } from './forms';
import type { Places } from './places';
import { send } from './send';

/** Every form of every page that somebody with this cookie can open, each action of each page once. */
export async function crawl(origin: string, o: { places: Places; cookie: string }): Promise<FoundForm[]> {
  const found = new Map<string, FoundForm>();
  for (const route of routes) {
    for (const path of addressesOf(route.example ?? route.path, o.places)) {
      const answer = await send(origin, {
        method: 'GET',
        path,
        headers: o.cookie ? { cookie: o.cookie } : {},
      });
      if (
        !('body' in answer) ||
        answer.status !== 200 ||
        !answer.headers['content-type']?.startsWith('text/html')
      )
        continue;
      for (const form of formsIn(answer.body, path)) {
        const names = form.fields.map(([name]) => name).join();
        found.set(`${form.actionId} ${names}`, found.get(`${form.actionId} ${names}`) ?? form);
      }
    }
  }
  return [...found.values()];
}

/** An address of the table for each thing its first place may be, the others filled with the first there is. */
function addressesOf(example: string, places: Places): string[] {
  const names = [...example.matchAll(/\{(\w+)\}/g)].map(([, name = '']) => name);
  const [first] = names;
  if (first === undefined) return [example];
  return (places[first] ?? []).map((value) =>
    names.reduce(
      (path, name) => path.replace(`{${name}}`, name === first ? value : (places[name]?.[0] ?? '')),
      example,
    ),
  );
}

/** Tokens of bookings that were begun and not ended; there is no other way to one than beginning it. */
export async function startedDraft(origin: string): Promise<string[]> {
  const prices = await send(origin, { method: 'GET', path: '/prices', headers: {} });
  const model = 'body' in prices ? /\/prices\/([\w-]+)"/.exec(prices.body)?.[1] : undefined;
  const page = await send(origin, { method: 'GET', path: `/prices/${model}`, headers: {} });
  const path = 'body' in page ? /\/book\/start\?repair=[\da-f-]{36}/.exec(page.body)?.[0] : undefined;
  const start = await send(origin, { method: 'GET', path: path ?? '/', headers: {} });
  const form = 'body' in start ? formsIn(start.body, path ?? '')[0] : undefined;
  if (!form) throw new Error('There is no form to begin a booking with.');
  const parts = form.fields.map(([name, value]) => ({ name, value }));
  const plan = {
    kind: 'without script',
    method: 'POST',
    path: form.page,
    headers: {},
    actionId: form.actionId,
    bound: JSON.parse(form.bound),
    parts,
    harm: 'none',
  } as const;
  const answer = await send(origin, bytesOf(plan, { origin, cookie: '', address: '192.0.2.2' }));
  const token =
    'headers' in answer ? /\/book\/([\w-]+)\//.exec(answer.headers['location'] ?? '')?.[1] : undefined;
  if (!token) throw new Error('A booking could not be begun.');
  return [token];
}
