/**
 * `npm run backup [-- --to FILE] [--without-secret]`: everything the workshop keeps in one file, while the app runs or not.
 * docs/backup.md says what is in it and how it comes back.
 */
import path from 'node:path';
import { parseArgs } from 'node:util';
import { openPlace } from '@/lib/backup/file-place';
import { makeBackup } from '@/lib/backup/make-backup';
import { nameOf } from '@/lib/backup/rules/names';
import { sizeInWords } from '@/lib/backup/rules/size';
import { isSecretKept } from '@/lib/backup/secret';
import { now } from '@/lib/clock';
import { authSecret, config } from '@/lib/config';
import { runCommand } from './run-command';
import { withDatabase } from './with-database';

const usage = 'npm run backup [-- --to FILE] [--without-secret]';

await runCommand(usage, async () => {
  const { values } = parseArgs({
    options: { to: { type: 'string' }, 'without-secret': { type: 'boolean', default: false } },
  });
  const at = now();
  const file = path.resolve(values.to ?? path.join(config.backups.folder, nameOf(at, false)));
  const hasSecret = isSecretKept() && !values['without-secret'];
  const files = await openPlace(config.files);
  const made = await withDatabase(() =>
    makeBackup({ file, databaseUrl: config.databaseUrl, secret: authSecret(), hasSecret, files, now: at }),
  );
  console.log(`Backup made: ${file}
  ${made.rows} rows of ${made.tables} tables, ${made.files} files, ${sizeInWords(made.size)}; the database was held for ${(made.heldMs / 1000).toFixed(1)} s.`);
  tellOf('Not in the store, and so not in the backup', made.missing);
  tellOf('Not as they were when they were kept, by the hash in their row', made.changed);
  console.log(
    hasSecret
      ? '  The secret is in it: whoever has the file can read and sign everything. Keep it where only you can get at it.'
      : '  The secret is not in it: keep AUTH_SECRET (or data/secret) as well, nothing comes back whole without it.',
  );
});

function tellOf(what: string, keys: readonly string[]): void {
  if (keys.length === 0) return;
  const more = keys.length > 5 ? ` and ${keys.length - 5} more` : '';
  console.log(`  ${what}: ${keys.slice(0, 5).join(', ')}${more}.`);
}
