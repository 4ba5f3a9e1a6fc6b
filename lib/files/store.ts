/**
 * Where bytes are kept: a folder, or a bucket that speaks S3. Glossary:
 * - key: the name of a file in the store, made here or by the caller, never taken from what a visitor sent.
 * Nothing in the store is public; every file is served by a route that asks who may see it.
 */
import { buffer } from 'node:stream/consumers';
import { Disk } from 'flydrive';
import { FSDriver } from 'flydrive/drivers/fs';
import type { DriverContract } from 'flydrive/types';
import { config, type FileSettings } from '@/lib/config';

/** Keeps bytes under a key, replacing what was there. */
export async function putFile(key: string, bytes: Uint8Array, contentType: string): Promise<void> {
  await (await disk()).put(key, bytes, { contentType });
}

/** The bytes kept under a key; throws when there are none. */
export async function readFile(key: string): Promise<Uint8Array> {
  // flydrive 1.3.0's getBytes hands out the whole memory block behind an empty file, so the stream is read instead.
  return new Uint8Array(await buffer(await (await disk()).getStream(key)));
}

export async function hasFile(key: string): Promise<boolean> {
  return (await disk()).exists(key);
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
  // A driver that is missing now may be installed before the next try.
  opened.catch(() => {
    opened = undefined;
  });
  return opened;
}

/** The store of these settings; refuses S3 without its driver's packages, naming them. */
export async function openDisk(settings: FileSettings): Promise<Disk> {
  if (settings.kind === 'folder')
    return new Disk(new FSDriver({ location: settings.folder, visibility: 'private' }));
  return new Disk(await s3Driver(settings));
}

// The S3 driver needs packages of 20 MB that a workshop with a folder never uses, so they are not among the dependencies.
const s3Packages = ['@aws-sdk/client-s3@3.1175.0', '@aws-sdk/s3-request-presigner@3.1169.0'];

async function s3Driver(s3: FileSettings & { kind: 's3' }): Promise<DriverContract> {
  const { S3Driver } = await import(/* turbopackIgnore: true */ 'flydrive/drivers/s3').catch(
    (error: unknown) => {
      throw new Error(`FILES=s3 needs two packages first: npm install ${s3Packages.join(' ')}`, {
        cause: error,
      });
    },
  );
  return new S3Driver({
    bucket: s3.bucket,
    region: s3.region,
    ...(s3.endpoint && { endpoint: s3.endpoint, forcePathStyle: true }),
    credentials: { accessKeyId: s3.keyId, secretAccessKey: s3.key },
    visibility: 'private',
    supportsACL: false,
  });
}
