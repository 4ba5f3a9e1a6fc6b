import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import { Refusal } from '@/lib/outcome';
import { SECRET_ENTRY } from './make-backup';
import { entriesOf, FORMAT, type Manifest, manifestShape } from './rules/manifest';
import { secretMark } from './secret';
import { broken, MANIFEST, readTar, sha256 } from './tar-file';

export type Checked = { manifest: Manifest; secret: string | undefined };

const unzip = promisify(gunzip);

/**
 * Reads a backup from its first byte to its last and compares every hash in it. Nothing is written anywhere.
 * Refuses what is not whole, naming the entry that is not as it was.
 */
export async function checkBackup(file: string): Promise<Checked> {
  const found = new Map<string, string>();
  const linesOf = new Map<string, { digest: ReturnType<typeof createHash>; rows: number }>();
  let secret: string | undefined;
  let manifest: Manifest | undefined;
  const finding = await readTar(file, async (name, bytes) => {
    if (found.has(name)) throw broken(`${name} is in it twice`);
    found.set(name, sha256(bytes));
    if (name === MANIFEST) manifest = readManifest(bytes);
    if (name === SECRET_ENTRY) secret = bytes.toString('utf8').trim();
    const table = /^tables\/([^/]+)\//.exec(name)?.[1];
    if (table === undefined) return;
    const lines = linesOf.get(table) ?? { digest: createHash('sha256'), rows: 0 };
    linesOf.set(table, lines);
    // What cannot be unpacked has another hash too, and is told by it once the manifest is known.
    const text = await unzip(bytes).catch(() => Buffer.alloc(0));
    lines.digest.update(text);
    lines.rows += text.reduce((sum, byte) => (byte === 10 ? sum + 1 : sum), 0);
  });
  if (!manifest || finding === 'manifest-changed') throw broken(`${MANIFEST} or its seal was changed`);
  compareEntries(manifest, found);
  for (const { name, rows, sha256: hash } of manifest.tables) {
    const lines = linesOf.get(name) ?? { digest: createHash('sha256'), rows: 0 };
    if (lines.rows !== rows || lines.digest.digest('hex') !== hash)
      throw broken(`the rows of table ${name} do not fit their hash`);
  }
  if (manifest.secret.isInside && secretMark(secret ?? '') !== manifest.secret.mark)
    throw broken(`the entry ${SECRET_ENTRY} is not as it was`);
  if (finding !== 'whole') throw broken('bytes between its entries, or its seal, were changed');
  return { manifest, secret };
}

function compareEntries(manifest: Manifest, found: ReadonlyMap<string, string>): void {
  const named = new Set([MANIFEST, SECRET_ENTRY]);
  for (const entry of entriesOf(manifest)) {
    named.add(entry.name);
    const hash = found.get(entry.name);
    if (hash === undefined) throw broken(`${entry.name} is not in it`);
    if (hash !== entry.sha256) throw broken(`${entry.name} is not as it was`);
  }
  const extra = [...found.keys()].find((name) => !named.has(name));
  if (extra !== undefined) throw broken(`${extra} does not belong in it`);
}

function readManifest(bytes: Buffer): Manifest {
  let given: unknown;
  try {
    given = JSON.parse(bytes.toString('utf8'));
  } catch {
    throw broken(`${MANIFEST} cannot be read`);
  }
  const format = typeof given === 'object' && given !== null ? Reflect.get(given, 'format') : undefined;
  if (typeof format === 'number' && format > FORMAT) {
    throw new Refusal(
      'invalid',
      `This backup has form ${format}; this version of the program reads ${FORMAT}.`,
    );
  }
  const parsed = manifestShape.safeParse(given);
  if (!parsed.success) throw broken(`${MANIFEST} is not one of ours`);
  return parsed.data;
}
