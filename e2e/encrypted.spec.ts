import { certificate } from './screens/certificate';
import { signIn } from './screens/sign-in';
import { builtActions } from './world/call-action';
import { CALLER, type Encrypted, startEncrypted } from './world/encrypted';
import { linesOf } from './world/fleet';
import { issuedCertificate } from './world/issued';
import { staff } from './world/people';
import { readPage, sendForm } from './world/send-form';
import { test as base, expect } from './world/test';

const test = base.extend<object, { encrypted: Encrypted }>({
  encrypted: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of the fixtures from this very pattern
    async ({}, use) => {
      const encrypted = await startEncrypted();
      await use(encrypted);
      await encrypted.stop();
    },
    { scope: 'worker' },
  ],
});

test('behind a proxy that encrypts, cookies and pages are for encrypted connections alone', async ({
  browser,
  encrypted,
}) => {
  const { origin, ask } = encrypted;
  const context = await browser.newContext({ baseURL: origin, ignoreHTTPSErrors: true });
  const page = await context.newPage();
  await signIn(page).as('owner');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Today');
  const cookies = await context.cookies();
  expect(cookies.length).toBeGreaterThan(0);
  for (const cookie of cookies) {
    // A browser takes such a name only with Secure, with the path / and without a domain (RFC 6265bis, 4.1.3.2).
    expect(cookie.name).toMatch(/^__Host-/);
    expect(cookie).toMatchObject({ secure: true, httpOnly: true, path: '/', domain: 'localhost' });
  }
  const cookie = cookies.map(({ name, value }) => `${name}=${value}`).join('; ');
  await context.close();

  await test.step('every kind of answer asks for an encrypted connection from now on', async () => {
    const { body } = await ask('/');
    const built = /\/_next\/static\/[^"]+\.js/.exec(body)?.[0] ?? '';
    const job = /\/workshop\/jobs\/(J\w{8})/.exec(
      (await ask('/workshop/jobs', { headers: { cookie } })).body,
    )?.[1];
    const kinds: [path: string, status: number][] = [
      ['/', 200],
      ['/workshop', 200],
      [`/workshop/jobs/${job}/label.pdf`, 200],
      [built, 200],
      ['/robots.txt', 200],
      ['/ready', 200],
      ['/no-such-page', 404],
      ['/_next/static/no-such-file.js', 404],
    ];
    for (const [path, status] of kinds) {
      const answer = await ask(path, { headers: { cookie } });
      expect(answer.status, path).toBe(status);
      expect(answer.headers['strict-transport-security'], path).toBe('max-age=31536000');
    }
    const refused = await ask('/', { method: 'DELETE' });
    expect(refused.status).toBe(405);
    expect(refused.headers['strict-transport-security']).toBe('max-age=31536000');
  });

  await test.step('a forged host leads nowhere', async () => {
    for (const name of ['x-forwarded-host', 'forwarded', 'host']) {
      const value = name === 'forwarded' ? 'host=elsewhere.example.org' : 'elsewhere.example.org';
      const { status, headers, body } = await ask('/workshop', { headers: { [name]: value } });
      expect(status, name).toBe(307);
      expect(`${headers['location']} ${body}`, name).not.toContain('elsewhere.example.org');
    }
  });

  await test.step('a form is taken from our own pages and from no other', async () => {
    const id = builtActions().find((built) => built.action.endsWith(' signOutAction'))?.id ?? '';
    const form = new FormData();
    form.append('0', '[{},"$K1"]');
    const whole = new Response(form);
    const type = whole.headers.get('content-type') ?? '';
    const body = Buffer.from(await whole.arrayBuffer());
    const post = (from: Record<string, string>) =>
      ask('/workshop/account', {
        method: 'POST',
        headers: { cookie, 'content-type': type, 'next-action': id, ...from },
        body,
      });
    for (const foreign of [
      { origin: 'https://elsewhere.example.org' },
      { origin: 'https://elsewhere.example.org', 'x-forwarded-host': 'elsewhere.example.org' },
      { origin: origin.replace('https:', 'http:') },
      { origin: 'null' },
      { 'sec-fetch-site': 'same-site' },
    ]) {
      expect((await post(foreign)).status, JSON.stringify(foreign)).toBe(403);
    }
    expect((await ask('/workshop', { headers: { cookie } })).status).toBe(200);
    const own = await post({ origin });
    expect(own.headers['x-action-redirect']).toContain('/workshop/sign-in');
    expect((await ask('/workshop', { headers: { cookie } })).status).toBe(307);
  });
});

test('the log of a day tells which pages were asked for, and nothing of who asked or what was typed', async ({
  browser,
  encrypted,
  workshop,
}) => {
  const { origin, ask, log } = encrypted;
  const issued = await issuedCertificate(await workshop('owner'), { mayClaim: true });
  const context = await browser.newContext({
    baseURL: origin,
    ignoreHTTPSErrors: true,
    extraHTTPHeaders: { 'user-agent': 'Marked Browser 7' },
  });
  const { request } = context;
  const typed = {
    name: 'Ysolde Marchbanks',
    email: 'ysolde.marchbanks@example.net',
    phone: '07700 900733',
    address1: '14 Telltale Row',
    postcode: 'QM7 7MK',
    town: 'Markhaven',
    country: 'GB',
  };
  const problem = 'It hums like a marked gull.';

  await test.step('a sign-in that fails and one that does not', async () => {
    const page = await readPage(request, '/workshop/sign-in');
    const wrong = { email: typed.email, password: 'marked-wrong-password' };
    expect((await sendForm(request, page, 'Sign in', wrong)).html).toContain(typed.email);
    const right = await sendForm(request, page, 'Sign in', staff.front);
    expect(right.url).toBe(`${origin}/workshop`);
    await context.clearCookies();
  });

  let link = '';
  await test.step('a booking, and a message on its private page', async () => {
    const model = /\/prices\/[\w-]+(?=")/.exec((await readPage(request, '/prices')).html)?.[0] ?? '';
    const start = /\/book\/start\?repair=[\da-f-]{36}/.exec((await readPage(request, model)).html)?.[0] ?? '';
    let page = await sendForm(request, await readPage(request, start), 'Start the booking', {});
    page = await sendForm(request, page, 'Continue', { serial: 'MARKED-4711' });
    page = await sendForm(request, page, 'Continue', { problem });
    page = await sendForm(request, page, 'Continue', { battery: 'healthy', data: 'none' });
    page = await sendForm(request, page, 'Continue', typed);
    const unfinished = new URL(page.url).pathname;
    page = await sendForm(request, page, 'Book this repair', { terms: 'yes' });
    link = new URL(page.url).pathname;
    expect(link).toMatch(/^\/job\/[\w-]{40,}$/);
    for (const path of [unfinished, link]) {
      const { headers, body } = await ask(path);
      expect(headers['cache-control'], path).toMatch(/no-store/);
      expect(headers).toMatchObject({
        'referrer-policy': 'same-origin',
        'cross-origin-opener-policy': 'same-origin',
      });
      expect(body, path).toMatch(/<meta name="robots" content="noindex/);
    }
    page = await sendForm(request, page, 'Send the message', { text: 'Marked words for the bench.' });
    expect(page.html).toContain('Marked words for the bench.');
  });

  await test.step('a claim, a lost certificate, and numbers that nothing has', async () => {
    const page = await context.newPage();
    const held = certificate(page);
    await page.goto(`/certificate/${issued.number}`);
    await held.serial.fill(issued.serial);
    await held.symptom('Something else').check();
    await held.details.fill(problem);
    await held.ask.click();
    await held.address.fill({ ...typed, street: typed.address1 });
    const battery = held.battery('Nothing odd about it');
    if (await battery.isVisible()) await battery.check();
    await held.recordings('I have saved a copy of what I need').check();
    await held.openClaim.click();
    await page.waitForURL('**/job/**');
    await page.close();
    const lost = await readPage(request, '/certificate/lost');
    await sendForm(request, lost, 'Send it again', { number: issued.number, email: typed.email });
    await request.get('/track/J0MARKED7');
    await request.get('/no-such-page?name=Ysolde');
    await request.get('/job/marked-token-marked-token-marked-token-mark');
  });
  await context.close();

  const lines = linesOf(log()).filter((line) => line['event'] === 'request');
  const routes = lines.map((line) => line['route']);
  for (const route of ['/workshop/sign-in', '/book/[draft]/[step]', '/job/[token]', '/certificate/[number]'])
    expect(routes, route).toContain(route);
  expect(lines.some((line) => 'leftOut' in line)).toBe(false);
  const marks = [
    ...Object.values(typed).filter((mark) => mark !== 'GB'),
    ...['Ysolde', 'MARKED', 'marked', 'Marked', CALLER, '__Host-', staff.front.email, staff.front.password],
    ...[link.split('/').at(-1) ?? 'no link', issued.number, issued.serial, issued.email],
  ];
  for (const mark of marks) expect(log(), mark).not.toContain(mark);
});
