import type { APIRequestContext } from '@playwright/test';
import { bookByForms } from './world/book-by-forms';
import { keptFiles, linesOf, logOf, members, restart } from './world/fleet';
import { readMails } from './world/mailbox';
import { staff } from './world/people';
import { phonePhoto } from './world/photo';
import { place } from './world/place';
import { readPage, sendForm } from './world/send-form';
import { expect, test } from './world/test';

const bookings = Number(process.env['SCALE_BOOKINGS'] ?? 20);
/** What is known of the customers of these tests, to be looked for in the logs. */
const known = {
  name: 'Ottilie Brandtmoor',
  street: '17 Halyard Rise',
  phone: '07700 900613',
  serial: 'G 209 ',
};
const tokens: string[] = [];
const customerOf = (at: number) => ({
  ...known,
  serial: `${known.serial}${String(100 + at)}`,
  email: `ottilie.${at}@example.net`,
});

type Open = (caller: string) => Promise<APIRequestContext>;

function opener(playwright: { request: { newContext: (o: object) => Promise<APIRequestContext> } }): Open {
  return (caller) =>
    playwright.request.newContext({ baseURL: place.origin, extraHTTPHeaders: { 'x-test-caller': caller } });
}

test('a session, a limit and a form hold on whichever instance answers', async ({ playwright }) => {
  const open = opener(playwright);
  const owner = await open('198.51.100.1');
  const { email, password } = staff.owner;
  await sendForm(owner, await readPage(owner, '/workshop/sign-in'), 'Sign in', { email, password });
  const served = new Set<string>();
  for (let time = 0; time < 6; time += 1) {
    const page = await readPage(owner, '/workshop');
    expect(new URL(page.url).pathname).toBe('/workshop');
    served.add(page.servedBy);
  }
  expect([...served].sort()).toEqual(['a', 'b']);

  const guesser = await open('198.51.100.2');
  const wrong = { email: 'nobody@example.org', password: 'not the one, not the one' };
  const answers: boolean[] = [];
  for (let time = 0; time < 7; time += 1) {
    const form = await readPage(guesser, '/workshop/sign-in');
    const answer = await sendForm(guesser, form, 'Sign in', wrong);
    answers.push(/too many|wait/i.test(answer.html.replace(/<script[\s\S]*?<\/script>/g, '')));
  }
  // Five tries for a caller and an account: counted apart, two instances would let ten pass.
  expect(answers).toEqual([false, false, false, false, false, true, true]);
});

test('bookings made at once on both are each made once, with a mail each', async ({ playwright }) => {
  test.setTimeout(600_000);
  const open = opener(playwright);
  let failed = 0;
  let next = 0;
  const work = async () => {
    while (next < bookings) {
      const at = next++;
      const customer = await open(`203.0.113.${at % 250}`);
      try {
        tokens.push(await bookByForms(customer, customerOf(at)));
      } catch (error) {
        failed += 1;
        console.error(error);
      }
      await customer.dispose();
    }
  };
  await Promise.all(Array.from({ length: 8 }, work));
  expect(failed).toBe(0);
  expect(new Set(tokens).size).toBe(bookings);
  await expect.poll(sentOnce, { timeout: 120_000 }).toBe(bookings);
  expect((await logOf('worker')).match(/"mail-sent"/g)?.length).toBeGreaterThanOrEqual(bookings);
  for (const pages of ['a', 'b'] as const) expect(await logOf(pages)).not.toContain('"mail-sent"');
});

test('a photo that one instance took is kept in the common store, and both show it', async ({
  playwright,
}) => {
  const customer = await opener(playwright)('198.51.100.4');
  const asked = {
    device: 'Tideline Gull',
    problem: 'It fell off a table, and the case is cracked.',
    name: known.name,
    email: 'ottilie at example',
  };
  const { stored } = await keptFiles();
  const form = await readPage(customer, '/quote/ask');
  // The form is refused for its address; the photo has arrived all the same, and its slip goes back to the page.
  const refused = await sendForm(customer, form, 'Ask for a price', {
    ...asked,
    photos: await phonePhoto('crack.jpg'),
  });
  expect(refused.html).toContain('Enter an e-mail address');
  expect((await keptFiles()).stored).toBeGreaterThan(stored);
  const quote = await sendForm(customer, refused, 'Ask for a price', {
    ...asked,
    email: 'ottilie.gull@example.net',
  });
  expect(new URL(quote.url).pathname).toMatch(/^\/quote\/[\w-]{20,}$/);
  const photo = /\/quote\/[\w-]{20,}\/photo\/[\w-]+/.exec(quote.html)?.[0] ?? '';

  const shown = new Map<string, string>();
  for (let time = 0; time < 8 && shown.size < 2; time += 1) {
    const answer = await customer.get(photo);
    expect(answer.headers()['content-type']).toBe('image/jpeg');
    shown.set(answer.headers()['x-served-by'] ?? '', (await answer.body()).toString('base64'));
  }
  expect([...shown.keys()].sort()).toEqual(['a', 'b']);
  expect(['a', 'b']).toContain(refused.servedBy);
  expect(shown.get('a')).toBe(shown.get('b'));
});

test('an instance is stopped and started again while others work, and no request fails', async ({
  playwright,
}) => {
  test.setTimeout(300_000);
  const open = opener(playwright);
  const customer = await open('198.51.100.3');
  const link = `/job/${tokens[0]}`;
  const faults: string[] = [];
  let asked = 0;
  let isOver = false;
  const load = async () => {
    while (!isOver) {
      for (const address of ['/prices', link, '/track']) {
        const page = await readPage(customer, address);
        asked += 1;
        if (page.status !== 200) faults.push(`${page.status} at ${page.servedBy}`);
      }
    }
  };
  const loading = Promise.all([load(), load()]);
  for (const member of ['a', 'b', 'worker'] as const) {
    expect(await restart(member)).toMatchObject({ code: 0 });
    // The balancer looks five times a second.
    await expect.poll(async () => (await readPage(customer, '/prices')).servedBy).toBe('a');
    await expect.poll(async () => (await readPage(customer, '/prices')).servedBy).toBe('b');
  }
  isOver = true;
  await loading;
  expect(faults).toEqual([]);
  expect(asked).toBeGreaterThan(20);
});

test('files lie in the common store, and no log tells who somebody is', async () => {
  expect((await keptFiles()).own.filter((name) => /\.(jpe?g|webp|pdf)$/.test(name))).toEqual([]);
  const told = [...Object.values(known), ...tokens, 'ottilie.', staff.owner.email, 'nobody@example.org'];
  for (const member of members) {
    // What the launcher prints for whoever starts it is no log: the log is JSON.
    const log = linesOf(await logOf(member)).map((line) => JSON.stringify(line));
    expect(log.length).toBeGreaterThan(1);
    for (const secret of told) expect(log.filter((line) => line.includes(secret))).toEqual([]);
  }
  expect(await logOf('a')).toContain('"route":"/job/[token]"');
});

/** How many of the customers have one message that their repair is booked; none may have two. */
async function sentOnce(): Promise<number> {
  const mails = (await readMails()).filter(({ subject }) => subject.includes('is booked'));
  const to = mails.flatMap((mail) => mail.to).filter((address) => address.startsWith('ottilie.'));
  expect(new Set(to).size).toBe(to.length);
  return to.length;
}
