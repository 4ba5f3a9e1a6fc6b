/**
 * Where bytes are kept: a folder, or a bucket that speaks S3. Glossary:
 * - key: the name of a file in the store, made here or by the caller, never taken from what a visitor sent.
 * Nothing in the store is public; every file is served by a route that asks who may see it.
 */
import { buffer } from 'node:stream/consumers';
import { Disk } from 'flydrive';
import { FSDriver } from 'flydrive/drivers/fs';
import { config, type FileSettings } from '@/lib/config';
import { Refusal } from '@/lib/outcome';

/**
 * Keeps bytes under a key, replacing what was there. A store that is full or away is refused in words, and what was
 * written of the file is taken back, since on a full disk it would only keep it full.
 */
export async function putFile(key: string, bytes: Uint8Array, contentType: string): Promise<void> {
  const store = await disk();
  try {
    await store.put(key, bytes, { contentType });
  } catch (error) {
    await store.delete(key).catch(() => {});
    throw Object.assign(new Refusal('unavailable', isFull(error) ? FULL : AWAY), { cause: error });
  }
}

const FULL =
  'There is no room left to keep the file. Nothing was saved. Make room on the disk and try again.';
const AWAY =
  'The file could not be kept, because its store does not answer. Nothing was saved. Try again soon.';

function isFull(error: unknown): boolean {
  const cause = error instanceof Error ? (error.cause ?? error) : undefined;
  return (
    cause instanceof Error && 'code' in cause && ['ENOSPC', 'EDQUOT', 'EFBIG'].includes(String(cause.code))
  );
}

/** The bytes kept under a key; throws when there are none. */
export async function readFile(key: string): Promise<Uint8Array> {
  // flydrive 1.3.0's getBytes hands out the whole memory block behind an empty file, so the stream is read instead.
  return new Uint8Array(await buffer(await (await disk()).getStream(key)));
}

export async function hasFile(key: string): Promise<boolean> {
  return (await disk()).exists(key);
}

/** When the bytes under a key were written, by the store's own clock; null when there are none. */
export async function keptSince(key: string): Promise<Date | null> {
  const store = await disk();
  try {
    return (await store.getMetaData(key)).lastModified;
  } catch (error) {
    // Two stores, two ways to say that there is nothing: asked once more, and what is there and cannot be told is an error.
    if (await store.exists(key)) throw error;
    return null;
  }
}

/** Forgets the bytes under a key; a key without bytes is no error. */
export async function deleteFile(key: string): Promise<void> {
  await (await disk()).delete(key);
}

/** The keys of the files in a folder, folders in it left out; none for a folder that is not there. */
export async function filesIn(folder: string): Promise<string[]> {
  const keys: string[] = [];
  let page: string | undefined;
  do {
    const found = await (await disk())
      .listAll(folder, page ? { paginationToken: page } : {})
      .catch(isNoFolder);
    for (const entry of found.objects) if (entry.isFile) keys.push(entry.key);
    page = found.paginationToken;
  } while (page);
  return keys;
}

function isNoFolder(error: unknown): { objects: never[]; paginationToken?: string } {
  const cause = error instanceof Error ? error.cause : undefined;
  if (cause instanceof Error && 'code' in cause && cause.code === 'ENOENT') return { objects: [] };
  throw error;
}

let opened: Promise<Disk> | undefined;

function disk(): Promise<Disk> {
  opened ??= openDisk(config.files);
  return opened;
}

/** The store of these settings, for work on two stores at once; everything else uses the functions above. */
export async function openDisk(settings: FileSettings): Promise<Disk> {
  if (settings.kind === 'folder')
    return new Disk(new FSDriver({ location: settings.folder, visibility: 'private' }));
  // Loaded only where it is used: the S3 client is the larger part of the program's start.
  const { S3Driver } = await import('flydrive/drivers/s3');
  const { bucket, region, endpoint, keyId, key } = settings;
  return new Disk(
    new S3Driver({
      bucket,
      region,
      ...(endpoint && { endpoint, forcePathStyle: true }),
      credentials: { accessKeyId: keyId, secretAccessKey: key },
      // Without these a store that takes a connection and never answers would keep whoever presses a button for ever.
      requestHandler: { connectionTimeout: 5000, requestTimeout: 20_000, throwOnRequestTimeout: true },
      maxAttempts: 2,
      visibility: 'private',
      supportsACL: false,
    }),
  );
}
