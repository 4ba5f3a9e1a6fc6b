/**
 * `npm run restore -- FILE [--check] [--other-secret]`: fills an empty place from a backup, or only looks whether one is whole.
 * The app must not run on that place. docs/backup.md has the steps.
 */
import { existsSync, readFileSync } from 'node:fs';
import { mkdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { type Checked, checkBackup } from '@/lib/backup/check-backup';
import { openPlace } from '@/lib/backup/file-place';
import { restoreBackup } from '@/lib/backup/restore-backup';
import { secretFile, secretMark } from '@/lib/backup/secret';
import { config } from '@/lib/config';
import { takeLock } from '@/lib/db/lock';
import { Refusal } from '@/lib/outcome';
import { runCommand } from './run-command';

const SHARED_STORE =
  '  Is this a rehearsal, while the workshop runs on that same store? Do not start it: what only the workshop’s own database names would be deleted after a week. Restore once more with FILES or DATA_DIR of its own.';
const SECOND_STEPS =
  '  Second steps were kept under the old secret and no longer fit. An owner gets in with: npm run owner:reset -- ADDRESS --second-step-off';

await runCommand('npm run restore -- FILE [--check] [--other-secret]', async () => {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      check: { type: 'boolean', default: false },
      'other-secret': { type: 'boolean', default: false },
    },
  });
  const [file, ...more] = positionals;
  if (!file || more.length > 0) {
    throw Object.assign(new Error('One file'), { code: 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE' });
  }
  const checked = await checkBackup(file);
  tell(checked);
  if (values.check) return;
  const began = performance.now();
  const secret = secretToWrite(checked, values['other-secret']);
  const restored = await withEmptyPlace(async (databaseUrl) => {
    const files = checked.manifest.files ? await openPlace(config.files) : null;
    const done = await restoreBackup({ file, databaseUrl, files, checked });
    if (secret !== undefined) {
      await mkdir(config.dataDir, { recursive: true, mode: 0o700 });
      await writeFile(secretFile(), secret, { flag: 'wx', mode: 0o600 });
    }
    return done;
  });
  console.log(`Restored and compared, every row and every file, in ${((performance.now() - began) / 1000).toFixed(1)} s.
  ${restored.files.put} files were put into the store, ${restored.files.there} were there already.`);
  if (restored.files.there > 0) console.log(SHARED_STORE);
  if (values['other-secret']) console.log(SECOND_STEPS);
  if (restored.migrated.length > 0)
    console.log(`  Brought up to this version: ${restored.migrated.length} migrations.`);
  if (restored.waitingMail > 0) {
    console.log(
      `  ${restored.waitingMail} messages waited when the backup was made and leave once the app runs; some may have left before. To look first: JOBS=off npm start`,
    );
  }
  console.log('Next: npm start');
});

function tell({ manifest, secret }: Checked): void {
  const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
  console.log(
    `A whole backup of ${manifest.madeAt}, by version ${manifest.program}: ${rows} rows of ${manifest.tables.length} tables, ${
      manifest.files?.length ?? 0
    } files, ${secret === undefined ? 'without' : 'with'} the secret.`,
  );
  if (manifest.missing.length > 0)
    console.log(`  ${manifest.missing.length} files were missing already when it was made.`);
  if (manifest.changed.length > 0)
    console.log(`  ${manifest.changed.length} files were not as they had been kept when it was made.`);
}

/** The secret to put into the data folder, or undefined when the one that is set is the right one. */
function secretToWrite({ manifest, secret }: Checked, isOtherWanted: boolean): string | undefined {
  const given = config.authSecret ?? readSecretFile();
  if (given !== undefined && secretMark(given) === manifest.secret.mark) return undefined;
  if (isOtherWanted) return undefined;
  if (given !== undefined) {
    throw new Refusal(
      'conflict',
      'AUTH_SECRET (or data/secret) is not the one this backup was made with. Give the right one, or add --other-secret: then sessions end, private links in sent mails stop working, a new signing key is needed, and authenticator apps and backup codes of the second step no longer fit. An owner gets in with npm run owner:reset -- ADDRESS --second-step-off; the others by People, where the second step is turned off with a new password.',
    );
  }
  if (secret !== undefined) return secret;
  throw new Refusal(
    'conflict',
    'This backup is without the secret: set AUTH_SECRET to the one it was made with, or add --other-secret: then sessions end, links stop working, a new signing key is needed, and second steps no longer fit (npm run owner:reset -- ADDRESS --second-step-off).',
  );
}

function readSecretFile(): string | undefined {
  return existsSync(secretFile()) ? readFileSync(secretFile(), 'utf8').trim() : undefined;
}

/** Opens the database to fill and holds its folder; of one that was not there before nothing stays when the work fails. */
async function withEmptyPlace<T>(work: (databaseUrl: string) => Promise<T>): Promise<T> {
  if (!config.isEmbedded) return work(config.databaseUrl);
  const lock = await takeLock(config.dataDir, 'a restore');
  if (!lock.taken) throw new Refusal('conflict', `The app runs on ${config.dataDir}. Stop it first.`);
  const folder = path.join(config.dataDir, 'database');
  const isNew = !existsSync(folder);
  const { startEmbedded } = await import('@/lib/db/embedded');
  const database = await startEmbedded(config.dataDir);
  let isFilled = false;
  try {
    const result = await work(database.url);
    isFilled = true;
    return result;
  } finally {
    await database.stop();
    if (isNew && !isFilled) await rm(folder, { recursive: true, force: true });
    await lock.release();
  }
}
