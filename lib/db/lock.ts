import { createHash } from 'node:crypto';
import { mkdir, realpath } from 'node:fs/promises';
import { connect, createServer, type ListenOptions, type Server } from 'node:net';

export type Holder = { folder: string; pid: number; url: string };
export type Lock =
  | { taken: true; release: () => Promise<void> }
  | { taken: false; holder: Holder | undefined };

/**
 * Takes the data folder for this process, or says who has it. The lock is an exclusive listening socket whose name
 * comes from the folder: the operating system frees it at death, even by kill -9, so it can neither look stale while a
 * long query runs nor stay behind. Who asks it is told the folder, process and address of the holder.
 */
export async function takeLock(dataDir: string, url: string): Promise<Lock> {
  await mkdir(dataDir, { recursive: true, mode: 0o700 });
  const folder = await realpath(dataDir);
  const place = placeOf(folder);
  const holder: Holder = { folder, pid: process.pid, url };
  const server = createServer((socket) =>
    socket.on('error', () => socket.destroy()).end(JSON.stringify(holder)),
  );
  if (await listen(server, place)) {
    server.unref();
    return { taken: true, release: () => new Promise((resolve) => server.close(() => resolve())) };
  }
  const answer = await ask(place);
  return { taken: false, holder: answer?.folder === folder ? answer : undefined };
}

/** An abstract socket on Linux (unix(7): no file, gone with its process); a loopback port elsewhere. */
function placeOf(folder: string): ListenOptions & { port?: number; path?: string } {
  const mark = createHash('sha256').update(folder).digest();
  if (process.platform === 'linux') return { path: `\0mendpost-${mark.toString('hex')}` };
  // Below the ports that systems hand out by themselves (IANA: 49152 and up; Linux: 32768 and up).
  return { host: '127.0.0.1', port: 20_000 + (mark.readUInt32BE(0) % 12_000) };
}

function listen(server: Server, place: ListenOptions): Promise<boolean> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') resolve(false);
      else reject(error);
    });
    server.listen({ ...place, exclusive: true }, () => resolve(true));
  });
}

function ask(place: ReturnType<typeof placeOf>): Promise<Holder | undefined> {
  return new Promise((resolve) => {
    const { path, host, port = 0 } = place;
    const socket = path ? connect({ path }) : connect({ port, host: host ?? '127.0.0.1' });
    let text = '';
    socket.setTimeout(3000, () => socket.destroy());
    socket.on('data', (chunk) => {
      text += chunk;
    });
    socket.on('error', () => resolve(undefined));
    socket.on('close', () => resolve(readHolder(text)));
  });
}

function readHolder(text: string): Holder | undefined {
  try {
    const { folder, pid, url } = JSON.parse(text);
    return { folder: String(folder), pid: Number(pid), url: String(url) };
  } catch {
    return undefined;
  }
}
