import { routes } from '@/e2e/world/routes';
import { BOOKING_STEPS } from '@/lib/jobs/rules/booking';
import { bytesOf } from './bytes';
import { TYPED } from './filled';
import { type FoundForm, formsIn, untouched } from './forms';
import type { Places } from './places';
import { type Answer, inParallel, send } from './send';

/** Pages that the table of routes has once and that come with other forms elsewhere. */
const MORE = BOOKING_STEPS.map((step) => `/book/{draft}/${step}`);

/** Every form of every page that somebody with this cookie can open, each action of each page once; `look` sees each answer. */
export async function crawl(
  origin: string,
  o: { places: Places; cookie: string; look: (path: string, answer: Answer | { fault: string }) => void },
): Promise<FoundForm[]> {
  const examples = [...routes.map(({ example, path }) => example ?? path), ...MORE];
  const pages = examples.flatMap((example) => {
    const all = addressesOf(example, o.places);
    // Papers and photos hold no form, and a paper takes long to draw.
    return /\.(pdf|csv|zip|xml)$|\/photo\//.test(example) ? all.slice(0, 1) : all;
  });
  const answers = await inParallel(pages, async (path) => {
    const answer = await send(origin, { method: 'GET', path, headers: o.cookie ? { cookie: o.cookie } : {} });
    o.look(path, answer);
    return answer;
  });
  const found = new Map<string, FoundForm>();
  for (const [at, answer] of answers.entries()) {
    if ('fault' in answer || answer.status !== 200) continue;
    if (!answer.headers['content-type']?.startsWith('text/html')) continue;
    for (const form of formsIn(answer.body, pages[at] ?? '')) {
      const names = form.fields.map(({ name }) => name).join();
      found.set(`${form.actionId} ${names}`, found.get(`${form.actionId} ${names}`) ?? form);
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

/**
 * The token of a booking that was filled in up to its last step, since there is no other way to one than going it; none where
 * the owner's hostile forms have left nothing that can be booked.
 */
export async function startedDraft(origin: string): Promise<string[]> {
  const get = async (path: string): Promise<string> => {
    const answer = await send(origin, { method: 'GET', path, headers: {} });
    return 'body' in answer ? answer.body : '';
  };
  const model = /\/prices\/([\w-]+)"/.exec(await get('/prices'))?.[1];
  let path = /\/book\/start\?repair=[\da-f-]{36}/.exec(await get(`/prices/${model}`))?.[0] ?? '/';
  while (!path.endsWith('/confirm')) {
    const form = formsIn(await get(path), path)[0];
    const next = form && (await sendOn(origin, form));
    if (!next || next === path) return [];
    path = next;
  }
  return [path.split('/')[2] ?? ''];
}

/** Fills in a form of a booking, and returns the address it leads to. */
async function sendOn(origin: string, form: FoundForm): Promise<string | undefined> {
  const parts = untouched(form).map(({ name, value }) => ({
    name,
    value: value || (TYPED[name]?.[0] ?? ''),
  }));
  const plan = {
    route: '',
    kind: 'without script',
    method: 'POST',
    path: form.page,
    headers: {},
    actionId: form.actionId,
    bound: JSON.parse(form.bound),
    parts,
    harm: 'none',
  } as const;
  const address = `2001:db8:ffff:${Math.floor(performance.now()).toString(16).slice(-4)}::1`;
  const answer = await send(origin, bytesOf(plan, { origin, cookie: '', address }));
  return 'headers' in answer ? answer.headers['location']?.replace(origin, '') : undefined;
}
