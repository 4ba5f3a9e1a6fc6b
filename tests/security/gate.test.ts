import fc from 'fast-check';
import { extractInfoFromServerReferenceId } from 'next/dist/shared/lib/server-reference-info';
import { describe, expect, test } from 'vitest';
import { askGate } from '@/lib/gate/ask-gate';
import { isOwnOrigin } from '@/lib/gate/rules/origin';
import { argumentsOf, readsWithoutScript, readsWithScript } from '@/lib/gate/rules/sent-arguments';

const ours = 'https://mend.example.org';
const inside = 'http://127.0.0.1:3000';
const action = '60ab8dc91a05a66ace21ee2af471b6f50bc8eb06e5';
const boundAction = '70d788fb20ffc4f4d49bb882dd8155faaf5c08c46e';

describe('where a request comes from', () => {
  test.each([
    ['our own page', { origin: ours, site: 'same-origin', host: 'mend.example.org' }, true],
    [
      'our page behind a proxy that keeps the inner name',
      { origin: ours, site: null, host: '127.0.0.1:3000' },
      true,
    ],
    [
      'a second name of the machine',
      { origin: 'http://bench.local:3000', site: null, host: 'bench.local:3000' },
      true,
    ],
    ['no browser at all', { origin: null, site: null, host: '127.0.0.1:3000' }, true],
    [
      'another site',
      { origin: 'https://elsewhere.example.org', site: 'cross-site', host: 'mend.example.org' },
      false,
    ],
    [
      'another site in an old browser',
      { origin: 'https://elsewhere.example.org', site: null, host: 'mend.example.org' },
      false,
    ],
    [
      'a neighbour under the same domain',
      { origin: 'https://blog.example.org', site: 'same-site', host: 'mend.example.org' },
      false,
    ],
    [
      'our name without encryption',
      { origin: 'http://mend.example.org', site: null, host: '127.0.0.1:3000' },
      false,
    ],
    [
      'our name without encryption, before a proxy that keeps the public name',
      { origin: 'http://mend.example.org', site: null, host: 'mend.example.org' },
      false,
    ],
    [
      'a page without an origin, as in a sandboxed frame',
      { origin: 'null', site: null, host: 'mend.example.org' },
      false,
    ],
    ['a file', { origin: 'file://', site: null, host: 'mend.example.org' }, false],
    ['no address', { origin: ':::', site: null, host: 'mend.example.org' }, false],
    [
      'a name that begins like ours',
      { origin: 'https://mend.example.org.example.net', site: null, host: 'mend.example.org' },
      false,
    ],
    [
      'a cross-site request that hides its origin',
      { origin: null, site: 'cross-site', host: 'mend.example.org' },
      false,
    ],
  ])('%s', (_, said, isOurs) => {
    expect(isOwnOrigin(said, ours)).toBe(isOurs);
  });

  test('is judged without throwing, whatever is said', () => {
    const text = fc.option(fc.string({ unit: 'binary' }));
    fc.assert(
      fc.property(text, text, text, (origin, site, host) => {
        expect(typeof isOwnOrigin({ origin, site, host }, ours)).toBe('boolean');
      }),
    );
  });
});

describe('what a form with script sends', () => {
  const sent = (root: string, id = boundAction) => readsWithScript(id, new Map([['0', root]]));

  test.each([
    ['["J7K2M4PX3",{},"$K1"]', true],
    ['[7,{},"$K1"]', true],
    [
      '[null,{"errors":{"email":["Enter it"]},"values":{"history":["a","b"]},"message":"$undefined"},"$K1"]',
      true,
    ],
    ['["$$5 was paid",{},"$K1"]', true],
    ['["a",{"values":{"a":["x"]},"again":"$0:1:values:a"},"$K1"]', true],
    ['', false],
    ['{', false],
    ['[]', false],
    ['5', false],
    ['[{},"$K1"]', false],
    ['["a","b",{},"$K1"]', false],
    ['["a",{}]', false],
    ['["a","b","$K1"]', false],
    ['["a",[],"$K1"]', false],
    ['[{"startsWith":"J"},{},"$K1"]', false],
    ['[["a"],{},"$K1"]', false],
    ['["$K1",{},"$K2"]', false],
    ['["$@1",{},"$K1"]', false],
    ['["$F1",{},"$K1"]', false],
    ['["$Q1",{},"$K1"]', false],
    ['["$n99999999999999999999",{},"$K1"]', false],
    ['["$99",{},"$K1"]', false],
    ['["$undefined",{},"$K1"]', false],
    ['[true,{},"$K1"]', false],
    ['["a\\u0000b",{},"$K1"]', false],
    ['["\\ud800",{},"$K1"]', false],
    ['["$0:1",{},"$K1"]', false],
    ['["$0:7",{},"$K1"]', false],
    ['["$0:constructor",{},"$K1"]', false],
    ['["a",{"a":{"b":["$B1"]}},"$K1"]', false],
  ])('%s', (root, isPlain) => {
    expect(sent(root)).toBe(isPlain);
  });

  test('an action without anything bound, and what is no action', () => {
    expect(sent('[{},"$K1"]', action)).toBe(true);
    expect(sent('[{},"$K1"]', 'constructor')).toBe(false);
    expect(sent('["$K1"]', `40${action.slice(2)}`)).toBe(false);
  });

  test('a value too deep, and a list too long', () => {
    expect(sent(`["a",{"a":${'['.repeat(50)}${']'.repeat(50)}},"$K1"]`)).toBe(false);
    expect(sent(`[${'0,'.repeat(2000)}{},"$K1"]`)).toBe(false);
  });

  test('any plain answer of before reads, whatever it is', () => {
    const plain = fc.jsonValue({ maxDepth: 4 }).filter((value) => !JSON.stringify(value).includes('"$'));
    fc.assert(fc.property(plain, (value) => sent(JSON.stringify(['a', { value }, '$K1']))));
  });

  test('no text makes it throw', () => {
    fc.assert(fc.property(fc.string(), fc.json(), (a, b) => void [sent(a), sent(b), sent(`[${b},"$K1"]`)]));
  });
});

test('the number of arguments is read from an id as Next reads it', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 0xff }), (info) => {
      const id = info.toString(16).padStart(2, '0') + action.slice(2);
      const { usedArgs } = extractInfoFromServerReferenceId(id);
      expect(argumentsOf(id)).toBe(usedArgs.filter(Boolean).length);
    }),
  );
});

test('a form without script names its action whole, or none', () => {
  const named = (reference: string, values: string) =>
    readsWithoutScript(
      new Map<string, string | true>([
        ['$ACTION_REF_1', ''],
        ['$ACTION_1:0', reference],
        ['$ACTION_1:1', values],
        ['email', 'bryn@example.net'],
      ]),
    );
  const whole = `{"id":"${boundAction}","bound":"$@1"}`;
  expect(named(whole, '["J7K2M4PX3",{}]')).toBe(true);
  expect(readsWithoutScript(new Map([['q', 'recorder']]))).toBe(true);
  expect(named(whole, '["$F1",{}]')).toBe(false);
  expect(named(whole, '[{}]')).toBe(false);
  expect(named(whole, '["J7K2M4PX3",{}')).toBe(false);
  expect(named(`{"id":"${boundAction}","bound":"$@7"}`, '["J7K2M4PX3",{}]')).toBe(false);
  expect(named('{"id":"constructor","bound":"$@1"}', '[{}]')).toBe(false);
  expect(readsWithoutScript(new Map([['$ACTION_REF_1', '']]))).toBe(false);
  expect(readsWithoutScript(new Map([[`$ACTION_ID_${action}`, '']]))).toBe(false);
});

describe('the gate', () => {
  const ask = (method: string, path: string, o: RequestInit = {}) =>
    askGate(new Request(`${inside}${path}`, { method, ...o }), ours).then((answer) =>
      answer.opens ? 'opens' : answer.status,
    );
  const form = () => {
    const sent = new FormData();
    sent.set('0', '[{},"$K1"]');
    sent.set('1_email', 'bryn@example.net');
    return sent;
  };

  test('takes the methods the house knows', async () => {
    expect(await ask('GET', '/prices')).toBe('opens');
    expect(await ask('HEAD', '/prices')).toBe('opens');
    expect(await ask('PUT', '/photo')).toBe('opens');
    for (const method of ['PUT', 'DELETE', 'PATCH', 'OPTIONS', 'PROPFIND'])
      expect(await ask(method, '/prices')).toBe(405);
  });

  test('reads what it is asked to read from anywhere', async () => {
    expect(await ask('GET', '/prices', { headers: { origin: 'https://elsewhere.example.org' } })).toBe(
      'opens',
    );
  });

  test.each(['POST', 'PUT'])('refuses a %s of another site, to a page or to a file', async (method) => {
    const headers = { origin: 'https://elsewhere.example.org' };
    expect(await ask(method, '/photo', { headers })).toBe(403);
    expect(await ask(method, '/photo', { headers: { 'sec-fetch-site': 'cross-site' } })).toBe(403);
    expect(await ask(method, '/photo', { headers: { origin: ours } })).toBe('opens');
  });

  test('refuses a control character in the name of a field or file', async () => {
    const headers = { 'content-type': 'multipart/form-data; boundary=b', 'next-action': action };
    const body = (name: string) =>
      `--b\r\nContent-Disposition: form-data; name="0"\r\n\r\n[{},"$K1"]\r\n--b\r\nContent-Disposition: form-data; ${name}\r\n\r\nx\r\n--b--\r\n`;
    const sent = (name: string) => ask('POST', '/prices', { headers, body: body(name) });
    expect(await sent('name="1_photo"; filename="lid.jpg"')).toBe('opens');
    expect(await sent('name="1_photo"; filename="li\u0000d.jpg"')).toBe(400);
    expect(await sent('name="1_a\u0000b"')).toBe(400);
  });

  test('refuses a form that breaks off, and any body that is no form', async () => {
    const whole = new Request(inside, { method: 'POST', body: form() });
    const type = whole.headers.get('content-type') ?? '';
    const bytes = new Uint8Array(await whole.arrayBuffer());
    const headers = { 'content-type': type, 'next-action': action };
    expect(await ask('POST', '/prices', { headers, body: bytes })).toBe('opens');
    expect(await ask('POST', '/prices', { headers, body: bytes.subarray(0, bytes.length - 20) })).toBe(400);
    expect(
      await ask('POST', '/prices', {
        headers: { ...headers, 'content-type': 'multipart/form-data' },
        body: bytes,
      }),
    ).toBe(400);
    for (const other of [
      'text/plain;charset=UTF-8',
      'application/json',
      'application/x-www-form-urlencoded',
    ]) {
      expect(
        await ask('POST', '/prices', { headers: { ...headers, 'content-type': other }, body: '[{}]' }),
      ).toBe(415);
    }
  });
});
