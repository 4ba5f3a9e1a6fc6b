import { buffer } from 'node:stream/consumers';
import type { FileSettings } from '@/lib/config';
import { openDisk } from '@/lib/files/store';

/** A store of photos and papers by its settings: a move reads one and fills another. */
export type FilePlace = {
  has: (key: string) => Promise<boolean>;
  read: (key: string) => Promise<Buffer>;
  put: (key: string, bytes: Uint8Array) => Promise<void>;
  remove: (key: string) => Promise<void>;
};

export async function openPlace(settings: FileSettings): Promise<FilePlace> {
  const disk = await openDisk(settings);
  return {
    has: (key) => disk.exists(key),
    read: async (key) => buffer(await disk.getStream(key)),
    put: (key, bytes) => disk.put(key, bytes, { contentType: typeOf(key) }),
    remove: (key) => disk.delete(key),
  };
}

function typeOf(key: string): string {
  if (key.endsWith('.jpg')) return 'image/jpeg';
  return key.endsWith('.pdf') ? 'application/pdf' : 'application/octet-stream';
}
