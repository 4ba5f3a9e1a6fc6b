import fc from 'fast-check';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { config } from '@/lib/config';
import { log } from '@/lib/log';
import { faultOf } from '@/lib/log/fault';
import { type LogFields, readFields } from '@/lib/log/fields';
import { enterRequest } from '@/lib/log/request';

const mailId = '01939f3c-7a10-7c3e-9d3a-2f1b7c9e4a55';

const written: string[] = [];
beforeEach(() => {
  written.length = 0;
  config.logLevel = 'info';
  for (const level of ['info', 'warn', 'error'] as const) {
    vi.spyOn(console, level).mockImplementation((line) => void written.push(line));
  }
});
afterEach(() => {
  config.logLevel = 'warn';
  vi.restoreAllMocks();
});

test('ids, codes, counts and route patterns are told', () => {
  const fields = { requestId: 'a1b2c3d4', mailId, route: '/job/[token]/slip.pdf', status: 200, ms: 12 };
  expect(readFields(fields)).toEqual(fields);
  expect(readFields({ route: '/' })).toEqual({ route: '/' });
});

test.each([
  ['a name', { kind: 'Ottilie Brandt' }],
  ['a mail address', { mailId: 'ottilie@example.org' }],
  ['a private link instead of its pattern', { route: '/job/Q2xhdXNlLXRva2VuLW9mLTQz' }],
  ['a serial as a code', { code: 'TN 214-264' }],
  ['a job number as an id', { jobId: 'J4K7P2M9X' }],
  ['a sentence as a state', { state: 'waits for Ottilie' }],
  ['a line feed that would start a line of its own', { code: 'a\n{"level":"info"}' }],
  ['a number that is none', { count: Number.NaN }],
])('%s is left out, and only that it was is told', (_name, fields: LogFields) => {
  expect(readFields(fields)).toEqual({ leftOut: 1 });
});

test('a field that nobody named is left out', () => {
  const fields: object = { ...{ name: 'Ottilie', toString: 'x', constructor: 'y' }, status: 200 };
  expect(readFields(fields)).toEqual({ status: 200, leftOut: 3 });
});

test('no text with a space, an @ or a line feed passes any field', () => {
  const names = [
    'requestId',
    'mailId',
    'jobId',
    'route',
    'digest',
    'code',
    'kind',
    'state',
    'signal',
    'method',
  ];
  fc.assert(
    fc.property(
      fc.constantFrom(...names),
      fc.string(),
      fc.constantFrom(' ', '@', '\n', ','),
      fc.string(),
      (name, a, mark, b) => {
        expect(readFields({ [name]: a + mark + b })).toEqual({ leftOut: 1 });
      },
    ),
  );
});

test('an error is told by its class, its code and its places, without a word of its message', () => {
  const words =
    'no job of ottilie@example.org\n    at 9 Capstan Steps (/home/ottilie/TN-214.ts:1:2)\nserial TN 214 264';
  const error = Object.assign(new TypeError(words), { code: 'P2002' });
  const fault = faultOf(error);
  expect(fault).toMatchObject({ name: 'TypeError', code: 'P2002' });
  expect(fault.at[0]).toMatch(/^[\w.-]+\.ts:\d+:\d+$/);
  expect(faultOf('ottilie@example.org')).toEqual({ name: 'unknown', at: [] });
  expect(
    faultOf(Object.assign(new Error('x'), { name: 'ottilie@example.org', code: '9 Capstan Steps' })),
  ).toEqual({
    name: 'Error',
    at: expect.anything(),
  });
  log.error('mail-try-failed', { mailId }, error);
  expect(written[0]).toMatch(/^mail-try-failed: mailId=01939f3c\S+ TypeError P2002 [\w.-]+:\d+:\d+$/);
  expect(written.join('\n')).not.toMatch(/ottilie|Capstan|214/i);
});

test('what a request does carries its id, and what comes after another request that one', async () => {
  const serve = async (id: string) => {
    enterRequest(id);
    await new Promise((resolve) => setTimeout(resolve, 5));
    log.info('mail-sent', { mailId });
  };
  await Promise.all(['first-request', 'second-request'].map((id) => Promise.resolve().then(() => serve(id))));
  expect(written.toSorted()).toEqual([
    `mail-sent: requestId=first-request mailId=${mailId}`,
    `mail-sent: requestId=second-request mailId=${mailId}`,
  ]);
});

test('LOG_LEVEL leaves lesser things unwritten', () => {
  config.logLevel = 'error';
  log.info('mail-sent', { mailId });
  log.warn('mail-waits', { mailId });
  expect(written).toEqual([]);
});
