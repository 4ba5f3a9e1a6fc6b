import { expect, test } from 'vitest';
import { readConfig } from '@/lib/config';

const server = 'postgresql://mendpost@db.example.org/mendpost';
const secret = 'x'.repeat(32);

test('without any setting the app runs on this machine alone, with demonstration data', () => {
  expect(readConfig({})).toMatchObject({
    appUrl: 'http://127.0.0.1:3000',
    host: '127.0.0.1',
    port: 3000,
    isEmbedded: true,
    isDemo: true,
    hasJobs: true,
    isBehindProxy: false,
    files: { kind: 'folder' },
  });
});

const live = { NODE_ENV: 'production', APP_URL: 'https://post.example.org' };

test('in production there is no demonstration unless it is asked for', () => {
  expect(readConfig(live).isDemo).toBe(false);
  expect(readConfig({ NODE_ENV: 'production', DEMO: 'on' }).isDemo).toBe(true);
});

test('a database server gets no demonstration unless it is asked for', () => {
  expect(readConfig({ DATABASE_URL: server }).isDemo).toBe(false);
  expect(readConfig({ DATABASE_URL: server, DEMO: 'on' }).isDemo).toBe(true);
});

test('an empty value counts as absent, and the address loses its final slash', () => {
  expect(readConfig({ PORT: '', APP_URL: 'https://post.example.org/' })).toMatchObject({
    port: 3000,
    appUrl: 'https://post.example.org',
  });
});

test('production on a server wants a secret that was given to it', () => {
  expect(() => readConfig({ ...live, DATABASE_URL: server })).toThrow(/AUTH_SECRET/);
  const config = readConfig({ ...live, DATABASE_URL: server, AUTH_SECRET: secret });
  expect(config).toMatchObject({ databaseUrl: server, isEmbedded: false, authSecret: secret });
});

test('a live workshop wants the address that its letters and papers lead to', () => {
  expect(() => readConfig({ NODE_ENV: 'production' })).toThrow(/^Setting missing: APP_URL, [^\n]+$/);
  expect(readConfig({ NODE_ENV: 'production', DEMO: 'on' }).appUrl).toBe('http://127.0.0.1:3000');
  expect(readConfig({ DEMO: 'off' }).appUrl).toBe('http://127.0.0.1:3000');
});

test('production that sends mail wants the address that it comes from', () => {
  const sending = { ...live, SMTP_URL: 'smtp://mail.example.org' };
  expect(() => readConfig(sending)).toThrow(/^Setting missing: MAIL_FROM, [^\n]+$/);
  expect(() => readConfig({ ...sending, MAIL_FROM: ' ' })).toThrow(/MAIL_FROM/);
  const mailFrom = 'Quay & Alder <workshop@quayandalder.example.org>';
  expect(readConfig({ ...sending, MAIL_FROM: mailFrom })).toMatchObject({ mailFrom });
  expect(readConfig(live).smtpUrl).toBeUndefined();
  expect(readConfig({ ...sending, NODE_ENV: 'development' }).mailFrom).toBe('workshop@example.org');
});

test.each([
  ['a port that is no number', { PORT: 'many' }, /PORT/],
  ['a database that is no PostgreSQL', { DATABASE_URL: 'mysql://db.example.org/x' }, /DATABASE_URL/],
  ['an address without http', { APP_URL: 'post.example.org' }, /APP_URL/],
  ['a secret too short to be one', { AUTH_SECRET: 'short' }, /AUTH_SECRET/],
  ['a switch that is neither on nor off', { DEMO: 'yes' }, /DEMO/],
  ['a clock of its own outside demonstrations', { DEMO: 'off', CLOCK_FILE: 'clock' }, /CLOCK_FILE/],
  ['an hour that no clock shows', { BACKUP_AT: '24:00' }, /BACKUP_AT/],
  ['backups kept by two numbers', { BACKUP_KEEP: '7,4' }, /BACKUP_KEEP/],
  ['a bucket without its key', { FILES: 's3', S3_BUCKET: 'post' }, /S3_ACCESS_KEY_ID/],
])('%s is refused in one line that names the setting', (_name, environment, setting) => {
  const read = () => readConfig(environment);
  expect(read).toThrow(setting);
  expect(read).toThrow(/^[^\n]+$/);
});

test('a secret never shows in the refusal of another setting', () => {
  const read = () => readConfig({ AUTH_SECRET: secret, S3_SECRET_ACCESS_KEY: 'hush', PORT: 'many' });
  expect(read).not.toThrow(/hush|xxx/);
});

test('backups are made at three, but of a demonstration only when an hour is set', () => {
  const real = readConfig({ DEMO: 'off', DATA_DIR: '/srv/mendpost' }).backups;
  expect(real).toEqual({
    folder: '/srv/mendpost/backups',
    at: '03:00',
    keep: { days: 7, weeks: 4, months: 6 },
  });
  expect(readConfig({ DEMO: 'on' }).backups.at).toBeUndefined();
  expect(readConfig({ DEMO: 'on', BACKUP_AT: '02:30' }).backups.at).toBe('02:30');
  expect(readConfig({ DEMO: 'off', BACKUP_AT: 'off' }).backups.at).toBeUndefined();
  expect(readConfig({ BACKUP_DIR: '/mnt/other', BACKUP_KEEP: '3,0,12' }).backups).toMatchObject({
    folder: '/mnt/other',
    keep: { days: 3, weeks: 0, months: 12 },
  });
});
