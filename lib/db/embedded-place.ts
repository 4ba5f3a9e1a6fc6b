import { createHash } from 'node:crypto';
import { tmpdir } from 'node:os';
import path from 'node:path';

const socketName = '.s.PGSQL.5432';

// sun_path holds 108 bytes on Linux and 104 on macOS (unix(7), unix(4)), the final zero included.
const longestPath = 103;

/** The address under which the embedded database of a data folder is served while it runs. */
export function embeddedUrl(dataDir: string): string {
  return `postgresql://postgres@localhost/postgres?host=${encodeURIComponent(socketFolderOf(dataDir))}`;
}

export function socketPathOf(dataDir: string): string {
  return path.join(socketFolderOf(dataDir), socketName);
}

/** `<dataDir>/socket`, or a folder of this user among the temporary ones where that path would be too long. */
export function socketFolderOf(dataDir: string): string {
  const folder = path.join(path.resolve(dataDir), 'socket');
  if (Buffer.byteLength(path.join(folder, socketName)) <= longestPath) return folder;
  const mark = createHash('sha256').update(folder).digest('hex').slice(0, 16);
  return path.join(tmpdir(), `mendpost-${process.getuid?.() ?? 0}-${mark}`);
}
