import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Client } from 'pg';
import { afterEach, expect, inject, test } from 'vitest';
import { startEmbedded } from '@/lib/db/embedded';

let folder = '';
afterEach(() => {
  if (folder === '') return;
  spawnSync('umount', [folder]);
  rmSync(folder, { recursive: true, force: true });
});

test('an embedded database on a full disk refuses in words, keeps what it said it kept, and goes on when there is room', async (context) => {
  const world = inject('world');
  if (world.kind !== 'embedded') return context.skip('a server’s disk is its own affair');
  folder = mkdtempSync(path.join(tmpdir(), 'mendpost-full-'));
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=160m', 'tmpfs', folder]).status !== 0)
    return context.skip('only root may mount a small disk');
  cpSync(world.template, path.join(folder, 'database'), { recursive: true });
  const embedded = await startEmbedded(folder);
  const client = new Client({ connectionString: embedded.url });
  await client.connect();
  await client.query('create table row (n int, text text)');
  const { bavail, bsize } = statfsSync(folder);
  const filler = path.join(folder, 'filler');
  writeFileSync(filler, Buffer.alloc(bavail * bsize - 600_000));

  let kept = 0;
  const fill = async () => {
    for (;;) {
      await client.query('insert into row values ($1, $2)', [kept + 1, 'y'.repeat(2000)]);
      kept += 1;
    }
  };
  // PostgreSQL documentation, appendix A: 53100 is disk_full.
  await expect(fill()).rejects.toMatchObject({ code: '53100' });
  expect(kept).toBeGreaterThan(0);
  rmSync(filler);
  await client.query('insert into row values ($1, $2)', [kept + 1, 'room again']);
  const { rows } = await client.query('select count(*)::int as many, max(n) as last from row');
  expect(rows).toEqual([{ many: kept + 1, last: kept + 1 }]);
  await client.end();
  await embedded.stop();
}, 60_000);
