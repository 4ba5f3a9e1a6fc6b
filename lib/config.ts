import { randomBytes } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { embeddedUrl } from '@/lib/db/embedded-place';

const onOff = z.enum(['on', 'off']);
const text = z.string().min(1);

const settings = z.object({
  NODE_ENV: z.string().default('development'),
  DATABASE_URL: z.url({ protocol: /^postgres(ql)?$/ }).optional(),
  APP_URL: z.url({ protocol: /^https?$/ }).optional(),
  HOST: text.default('127.0.0.1'),
  PORT: z.coerce.number().int().min(1).max(65535).default(3000),
  DATA_DIR: text.default('data'),
  AUTH_SECRET: z.string().min(32, 'at least 32 characters').optional(),
  SMTP_URL: z.url({ protocol: /^smtps?$/ }).optional(),
  MAIL_FROM: text.default('workshop@example.org'),
  FILES: z.enum(['folder', 's3']).default('folder'),
  S3_BUCKET: text.optional(),
  S3_REGION: text.default('auto'),
  S3_ENDPOINT: z.url({ protocol: /^https?$/ }).optional(),
  S3_ACCESS_KEY_ID: text.optional(),
  S3_SECRET_ACCESS_KEY: text.optional(),
  DEMO: onOff.optional(),
  CLOCK_FILE: text.optional(),
  JOBS: z.enum(['on', 'off', 'only']).default('on'),
  TRUSTED_PROXY: onOff.default('off'),
  LOG_FORMAT: z.enum(['json', 'lines']).optional(),
  LOG_LEVEL: z.enum(['error', 'warn', 'info']).default('info'),
  METRICS_TOKEN: z.string().min(16, 'at least 16 characters').optional(),
  BACKUP_DIR: text.optional(),
  BACKUP_AT: z
    .string()
    .regex(/^([01]\d|2[0-3]):[0-5]\d$|^off$/, 'a time such as 03:00, or off')
    .optional(),
  BACKUP_KEEP: z
    .string()
    .regex(/^\d{1,3},\d{1,3},\d{1,3}$/, 'days, weeks and months to keep, such as 7,4,6')
    .default('7,4,6'),
  DRAIN_SECONDS: z.coerce.number().min(0).max(60).default(0),
});

export type FileSettings =
  | { kind: 'folder'; folder: string }
  | { kind: 's3'; bucket: string; region: string; endpoint?: string; keyId: string; key: string };

export type Config = {
  databaseUrl: string;
  /** True without DATABASE_URL: `npm start` serves the database of the data folder, and only while it runs. */
  isEmbedded: boolean;
  appUrl: string;
  host: string;
  port: number;
  dataDir: string;
  authSecret: string | undefined;
  smtpUrl: string | undefined;
  mailFrom: string;
  files: FileSettings;
  isDemo: boolean;
  clockFile: string | undefined;
  /** Mail and the clock's rounds are done by this process. */
  hasJobs: boolean;
  /** False in a worker that serves no pages. */
  hasPages: boolean;
  isBehindProxy: boolean;
  isProduction: boolean;
  /** How the log is written: JSON for machines, or lines for whoever sits before the terminal. */
  logFormat: 'json' | 'lines';
  logLevel: 'error' | 'warn' | 'info';
  /** Opens /metrics to whoever sends it; without it there is no such page. */
  metricsToken: string | undefined;
  backups: {
    folder: string;
    /** HH:MM on the workshop's wall clock; undefined when none are made by night */
    at: string | undefined;
    keep: { days: number; weeks: number; months: number };
  };
  /** How long a stopping process still takes requests, so that a balancer learns of it first. */
  drainSeconds: number;
};

/**
 * Settings from environment variables, checked together. An empty value counts as absent.
 * Refuses with an Error whose message is one line that names the setting, e.g. `PORT: expected a number`.
 */
export function readConfig(environment: Record<string, string | undefined>): Config {
  const given = Object.fromEntries(Object.entries(environment).filter(([, value]) => value?.trim() !== ''));
  const parsed = settings.safeParse(given);
  if (!parsed.success) {
    const lines = parsed.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
    throw new Error(`Setting not usable: ${lines.join('; ')}`);
  }
  const env = parsed.data;
  const isProduction = env.NODE_ENV === 'production';
  const isEmbedded = env.DATABASE_URL === undefined;
  // A server is somebody's real database, and a demonstration has an owner whose password everybody knows.
  const isDemo = (env.DEMO ?? (isProduction || !isEmbedded ? 'off' : 'on')) === 'on';
  if (env.CLOCK_FILE && !isDemo) {
    throw new Error('Setting not usable: CLOCK_FILE sets the time for tests and needs DEMO=on');
  }
  if (isProduction && env.DATABASE_URL && !env.AUTH_SECRET) {
    throw new Error(
      'Setting missing: AUTH_SECRET, at least 32 characters that stay the same, e.g. from `openssl rand -hex 32`',
    );
  }
  if (isProduction && !isDemo && !env.APP_URL) {
    throw new Error(
      'Setting missing: APP_URL, the address at which customers reach this program, e.g. https://post.example.org; links in mails and codes on paper lead there',
    );
  }
  if (isProduction && env.SMTP_URL && !given['MAIL_FROM']) {
    throw new Error(
      'Setting missing: MAIL_FROM, the address that SMTP_URL may send for, e.g. "Quay & Alder <workshop@example.org>"',
    );
  }
  if (env.JOBS === 'only' && isEmbedded) {
    throw new Error('Setting missing: JOBS=only works beside others on one server and needs DATABASE_URL');
  }
  return {
    databaseUrl: env.DATABASE_URL ?? embeddedUrl(env.DATA_DIR),
    isEmbedded,
    appUrl: (env.APP_URL ?? `http://${env.HOST}:${env.PORT}`).replace(/\/+$/, ''),
    host: env.HOST,
    port: env.PORT,
    dataDir: path.resolve(env.DATA_DIR),
    authSecret: env.AUTH_SECRET,
    smtpUrl: env.SMTP_URL,
    mailFrom: env.MAIL_FROM,
    files: fileSettings(env),
    isDemo,
    clockFile: env.CLOCK_FILE,
    hasJobs: env.JOBS !== 'off',
    hasPages: env.JOBS !== 'only',
    isBehindProxy: env.TRUSTED_PROXY === 'on',
    isProduction,
    logFormat: env.LOG_FORMAT ?? (isProduction ? 'json' : 'lines'),
    logLevel: env.LOG_LEVEL,
    metricsToken: env.METRICS_TOKEN,
    backups: backupSettings(env, isDemo),
    drainSeconds: env.DRAIN_SECONDS,
  };
}

// A demonstration can be made anew at any time.
function backupSettings(env: z.output<typeof settings>, isDemo: boolean): Config['backups'] {
  const at = env.BACKUP_AT ?? (isDemo ? 'off' : '03:00');
  const [days = 0, weeks = 0, months = 0] = env.BACKUP_KEEP.split(',').map(Number);
  return {
    folder: path.resolve(env.BACKUP_DIR ?? path.join(env.DATA_DIR, 'backups')),
    at: at === 'off' ? undefined : at,
    keep: { days, weeks, months },
  };
}

function fileSettings(env: z.output<typeof settings>): FileSettings {
  if (env.FILES === 'folder') return { kind: 'folder', folder: path.resolve(env.DATA_DIR, 'files') };
  if (!env.S3_BUCKET || !env.S3_ACCESS_KEY_ID || !env.S3_SECRET_ACCESS_KEY) {
    throw new Error('Setting missing: FILES=s3 needs S3_BUCKET, S3_ACCESS_KEY_ID and S3_SECRET_ACCESS_KEY');
  }
  return {
    kind: 's3',
    bucket: env.S3_BUCKET,
    region: env.S3_REGION,
    ...(env.S3_ENDPOINT && { endpoint: env.S3_ENDPOINT }),
    keyId: env.S3_ACCESS_KEY_ID,
    key: env.S3_SECRET_ACCESS_KEY,
  };
}

export const config = readConfig(process.env);

/**
 * The secret that signs sessions and private links: AUTH_SECRET, or one made on first use and kept in `data/secret`.
 * Two processes may ask at once: the exclusive write lets one create the file and the other reads it.
 */
export function authSecret(): string {
  if (config.authSecret) return config.authSecret;
  const file = path.join(config.dataDir, 'secret');
  mkdirSync(config.dataDir, { recursive: true });
  try {
    writeFileSync(file, randomBytes(32).toString('hex'), { flag: 'wx', mode: 0o600 });
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
  }
  return readFileSync(file, 'utf8').trim();
}
