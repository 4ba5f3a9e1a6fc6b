import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { type FileHandle, mkdir, open, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { Transform } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { extract, pack } from 'tar-stream';
import { Refusal } from '@/lib/outcome';
import type { Entry } from './rules/manifest';

/*
 * A backup is a plain tar file (POSIX ustar, with pax headers for long names) that any tar program lists and unpacks. Its last two
 * entries are manifest.json and a seal: the hashes of the manifest and of every byte before the seal. The seal's own bytes follow from
 * the two hashes, so that no byte of the file, not even one between the entries, can change unnoticed.
 */

const MANIFEST = 'manifest.json';
const SEAL = 'seal.sha256';
const END = 1024;
const SEAL_BYTES = 512 + 512 + END;
/** The largest entry is a photo of 15 MB at most (lib/files/photos); more is no backup of ours. */
const LARGEST = 64 * 1024 * 1024;

export type TarWriter = {
  add: (name: string, bytes: Uint8Array) => Promise<Entry>;
  /** Writes the manifest and the seal and gives the file its name; only now is there a backup. */
  finish: (manifest: unknown) => Promise<{ size: number }>;
  /** Leaves nothing behind; after `finish` it does nothing. */
  abandon: () => Promise<void>;
};

/** Writes a backup under another name until it is whole. Nobody but this user may read it. */
export async function writeTar(file: string, madeAt: Date): Promise<TarWriter> {
  await mkdir(path.dirname(file), { recursive: true, mode: 0o700 });
  const draft = `${file}.part`;
  await rm(draft, { force: true });
  const handle = await open(draft, 'wx', 0o600);
  const digest = createHash('sha256');
  let isOpen = true;
  const append = async (bytes: Buffer) => {
    digest.update(bytes);
    await writeAll(handle, bytes);
  };
  const add = async (name: string, bytes: Uint8Array) => {
    const all = await asTar(name, bytes, madeAt);
    await append(all.subarray(0, all.length - END));
    return { name, size: bytes.byteLength, sha256: sha256(bytes) };
  };
  return {
    add,
    async finish(manifest) {
      const entry = await add(MANIFEST, Buffer.from(`${JSON.stringify(manifest, null, 1)}\n`));
      await append(await seal(digest.copy().digest('hex'), entry.sha256));
      await handle.sync();
      const { size } = await handle.stat();
      await handle.close();
      isOpen = false;
      await rename(draft, file);
      await syncFolder(path.dirname(file));
      return { size };
    },
    async abandon() {
      if (!isOpen) return;
      isOpen = false;
      await handle.close();
      await rm(draft, { force: true });
    },
  };
}

/** Whether the seal fits; where it does not, whether it is the manifest that was changed, or any other byte. */
export type SealFinding = 'whole' | 'manifest-changed' | 'changed';

/**
 * Hands out the entries in their order, the manifest's too, and says whether the seal fits. `take` may throw to stop. Refuses a file
 * that cannot be read to its end, naming where.
 */
export async function readTar(
  file: string,
  take: (name: string, bytes: Buffer) => Promise<void>,
): Promise<SealFinding> {
  const { size } = await stat(file).catch(() => {
    throw new Refusal('not-found', `There is no file ${file}.`);
  });
  if (size <= SEAL_BYTES) throw broken('it is too short');
  const digest = createHash('sha256');
  const hashing = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      digest.update(chunk);
      done(null, chunk);
    },
  });
  const source = createReadStream(file, { end: size - SEAL_BYTES - 1 });
  const entries = extract();
  source.on('error', (error) => hashing.destroy(error));
  hashing.on('error', (error) => entries.destroy(error));
  source.pipe(hashing).pipe(entries);
  let last = 'its beginning';
  let manifestHash = '';
  try {
    for await (const entry of entries) {
      const { name, size: bytes = 0 } = entry.header;
      if (bytes > LARGEST) throw broken(`the header of the entry after ${last} is damaged`);
      const content = await buffer(entry);
      if (name === MANIFEST) manifestHash = sha256(content);
      await take(name, content);
      last = name;
    }
  } catch (error) {
    if (
      error instanceof Error &&
      /header|unexpected end|checksum/i.test(error.message) &&
      !(error instanceof Refusal)
    )
      throw broken(`the header of the entry after ${last} is damaged`);
    throw error;
  } finally {
    source.destroy();
  }
  if (manifestHash === '') throw broken(`it ends after ${last}, without its manifest`);
  const found = await buffer(createReadStream(file, { start: size - SEAL_BYTES }));
  if (found.equals(await seal(digest.digest('hex'), manifestHash))) return 'whole';
  return found.includes(manifestHash) ? 'changed' : 'manifest-changed';
}

export function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

export function broken(what: string): Refusal {
  return new Refusal('invalid', `This is not a whole backup: ${what}.`);
}

export { MANIFEST };

function seal(before: string, manifest: string): Promise<Buffer> {
  return asTar(SEAL, Buffer.from(`${before}\n${manifest}\n`), new Date(0));
}

/** One entry as a whole tar file, its end included. */
async function asTar(name: string, bytes: Uint8Array, mtime: Date): Promise<Buffer> {
  const made = pack();
  made.entry({ name, mtime, mode: 0o600 }, Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  made.finalize();
  return buffer(made);
}

async function writeAll(handle: FileHandle, bytes: Buffer): Promise<void> {
  for (let at = 0; at < bytes.length; ) at += (await handle.write(bytes, at)).bytesWritten;
}

/** The rename itself reaches the disk only with the folder (rename(2), fsync(2)). */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  await handle.sync().finally(() => handle.close());
}
