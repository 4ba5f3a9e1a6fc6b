import { send } from '@/lib/commands/fuzz/send';
import { builtActions } from './world/call-action';
import { readMails } from './world/mailbox';
import { place } from './world/place';
import { expect, test } from './world/test';

const elsewhere = 'https://elsewhere.example.org';
const lasting = '/workshop/jobs?stage=closed';

/** Asks as it stands: no browser in between that follows, adds or leaves out. */
async function ask(path: string, headers: Record<string, string> = {}, method = 'GET', body?: Buffer) {
  const answer = await send(place.origin, { method, path, headers, body });
  if ('fault' in answer) throw new Error(`${method} ${path}: ${answer.fault}`);
  return answer;
}

const signedIn = test.extend<{ owner: { cookie: string } }>({
  owner: async ({ sessionOf }, use) => {
    const { cookies } = await sessionOf('owner');
    await use({ cookie: cookies.map(({ name, value }) => `${name}=${value}`).join('; ') });
  },
});

test('every page lets run what carries its own fresh number, and carries nothing else', async () => {
  for (const path of ['/', '/prices', '/quote/ask', '/workshop/sign-in', '/no-such-page']) {
    const nonces = new Set<string>();
    for (const { headers, body } of [await ask(path), await ask(path)]) {
      const policy = headers['content-security-policy'] ?? '';
      const nonce = /script-src 'self' 'nonce-([^']+)'/.exec(policy)?.[1] ?? 'none';
      nonces.add(nonce);
      expect(policy, path).toContain(`style-src 'self' 'nonce-${nonce}'`);
      const run = [...body.matchAll(/<(?:script|style)\b([^>]*)>/g)].map(([, said = '']) => said);
      const ran = run.filter((said) => !said.includes('type="application/ld+json"'));
      expect(ran.length, path).toBeGreaterThan(0);
      expect(
        ran.filter((said) => !said.includes(`nonce="${nonce}"`)),
        path,
      ).toEqual([]);
      expect(body, path).not.toMatch(/<[^>]+\son[a-z]+=|(?:href|src|action)="javascript:/);
    }
    expect(nonces.size, `${path}, asked twice`).toBe(2);
  }
});

signedIn('every kind of answer tells a browser what it may do with it', async ({ owner }) => {
  const job = /\/workshop\/jobs\/(J\w{8})/.exec((await ask(lasting, owner)).body)?.[1];
  const own: [path: string, status: number][] = [
    ['/workshop', 200],
    [`/workshop/jobs/${job}`, 200],
    [`/workshop/jobs/${job}/label.pdf`, 200],
    ['/workshop/catalogue/file/catalogue.csv', 200],
    ['/workshop/catalogue/file/checks.csv', 200],
    ['/workshop/catalogue/file/policies.csv', 200],
    ['/workshop/money', 200],
  ];
  for (const [path, status] of own) {
    const answer = await ask(path, owner);
    expect(answer.status, path).toBe(status);
    expect(answer.headers, path).toMatchObject(everywhere);
    expect(answer.headers['cache-control'], path).toMatch(/no-store/);
  }
  const anyones: [path: string, status: number][] = [
    ['/', 200],
    ['/ready', 200],
    ['/robots.txt', 200],
    ['/no-such-page', 404],
    ['/_next/static/no-such-file.js', 404],
    ['/workshop/photo/no-such-photo', 307],
  ];
  for (const [path, status] of anyones) {
    const answer = await ask(path);
    expect(answer.status, path).toBe(status);
    expect(answer.headers, path).toMatchObject(everywhere);
    expect(answer.headers['content-security-policy'], path).toContain("frame-ancestors 'none'");
  }
});

const everywhere = {
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'same-origin',
  'permissions-policy': expect.stringContaining('microphone=()'),
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

test('no address takes a method that it does not know', async () => {
  for (const method of ['TRACE', 'DELETE', 'PATCH', 'PUT', 'PROPFIND']) {
    for (const path of ['/', '/ready', '/workshop/sign-in']) {
      const { status } = await ask(path, {}, method);
      expect(status, `${method} ${path}`).toBe(405);
    }
  }
});

test('the cookie of a session is out of reach of scripts and of other sites', async ({ sessionOf }) => {
  const { cookies } = await sessionOf('owner');
  expect(cookies.length).toBeGreaterThan(0);
  for (const cookie of cookies) {
    expect(cookie, cookie.name).toMatchObject({ httpOnly: true, path: '/', domain: '127.0.0.1' });
    expect(['Lax', 'Strict'], cookie.name).toContain(cookie.sameSite);
  }
});

signedIn('what another site sends is refused, whatever it says of its host', async ({ owner }) => {
  const id = idOf('/workshop/account/actions.ts signOutAction');
  const said: Record<string, string>[] = [
    { origin: elsewhere },
    { origin: elsewhere, 'x-forwarded-host': 'elsewhere.example.org' },
    { origin: 'null' },
    { 'sec-fetch-site': 'cross-site' },
  ];
  for (const foreign of said) {
    const { type, body } = await formBytes([['0', '[{},"$K1"]']]);
    const headers = { ...owner, ...foreign, 'content-type': type };
    const shut = [
      await ask('/workshop/account', { ...headers, 'next-action': id }, 'POST', body),
      await ask('/workshop/account', headers, 'POST', body),
      await ask('/photo?name=a.jpg', { ...headers, 'content-type': 'image/jpeg' }, 'PUT', body),
    ];
    expect(
      shut.map(({ status }) => status),
      JSON.stringify(foreign),
    ).toEqual([403, 403, 403]);
  }
  expect((await ask('/workshop', owner)).status, 'still signed in').toBe(200);
});

signedIn('a Host header of the caller’s making reaches no page and no mail', async ({ owner }) => {
  const host = 'elsewhere.example.org';
  const poison = { host, 'x-forwarded-host': host, 'x-forwarded-proto': 'https' };
  for (const path of ['/', '/prices', '/workshop', '/workshop/sign-in']) {
    const { body, headers } = await ask(path, poison);
    expect(`${headers['location']} ${body}`, path).not.toContain(host);
  }

  const job = /\/workshop\/jobs\/(J\w{8})/.exec((await ask(lasting, owner)).body)?.[1] ?? '';
  const sheet = await ask(`/workshop/jobs/${job}`, owner);
  const version = /name="version" value="(\d+)"/.exec(sheet.body)?.[1] ?? '';
  expect(version).not.toBe('');
  const { type, body } = await formBytes([
    ['_1_version', version],
    ['0', JSON.stringify([job, {}, '$K1'])],
  ]);
  const before = (await readMails()).length;
  const renewed = await ask(
    `/workshop/jobs/${job}`,
    {
      ...owner,
      ...poison,
      origin: place.origin,
      'content-type': type,
      'next-action': idOf('/workshop/jobs/[number]/actions.ts newLink'),
    },
    'POST',
    body,
  );
  expect(renewed.status).toBeLessThan(400);
  const sent = async () =>
    (await readMails()).slice(before).filter(({ subject }) => /New private/.test(subject));
  await expect.poll(async () => (await sent()).length, { timeout: 15_000 }).toBeGreaterThan(0);
  const links = (await sent()).flatMap((mail) => mail.links);
  expect(links.some((link) => link.startsWith(`${place.origin}/job/`))).toBe(true);
  expect(JSON.stringify(await sent())).not.toContain(host);
});

function idOf(action: string): string {
  const id = builtActions().find((built) => built.action === action)?.id;
  if (!id) throw new Error(`the build has no ${action}`);
  return id;
}

/** A form in React's own wire form: the list of arguments points at the fields and comes last. */
async function formBytes(fields: [name: string, value: string][]): Promise<{ type: string; body: Buffer }> {
  const form = new FormData();
  for (const [name, value] of fields) form.append(name, value);
  const whole = new Response(form);
  return { type: whole.headers.get('content-type') ?? '', body: Buffer.from(await whole.arrayBuffer()) };
}
