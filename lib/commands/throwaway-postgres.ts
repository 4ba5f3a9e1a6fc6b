import { spawnSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

export type Server = {
  url: string;
  /** the file it writes its log to */
  log: string;
  stop: () => void;
  /** ends all of its processes with SIGKILL, as a machine out of memory would; `start` opens the same files again */
  kill: () => Promise<void>;
  start: () => void;
};

/**
 * Starts a PostgreSQL server of its own in a temporary folder, fast and careless about power loss; `isCareful` leaves it
 * the server's own caution, for whoever wants to see what a crash leaves behind.
 */
export async function startThrowawayPostgres(o: { isCareful?: boolean } = {}): Promise<Server> {
  const bin = findBinaries();
  const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-pg-'));
  const user = unprivileged();
  if (user) chownSync(folder, user.uid, user.gid);
  const data = path.join(folder, 'data');
  const port = await freePort();
  const tell = (program: string, args: string[]) => {
    // Root's own folder may be closed to the other user: the programs run from the root folder.
    const result = spawnSync(path.join(bin, program), args, { cwd: '/', encoding: 'utf8', ...user });
    if (result.status !== 0) throw new Error(`${program} failed:\n${result.stdout}${result.stderr}`);
  };
  tell('initdb', [
    '-D',
    data,
    '-U',
    'postgres',
    '-A',
    'trust',
    '-E',
    'UTF8',
    '--locale=C.UTF-8',
    '--no-sync',
  ]);
  // Another zone than the app's, so that an instant read in the server's zone shows up as wrong.
  const zone = 'timezone=America/St_Johns';
  const careless = o.isCareful ? [] : ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off'];
  const settings = [
    `-p ${port}`,
    `-k ${folder}`,
    ...['listen_addresses=127.0.0.1', zone, 'max_connections=60', ...careless].map((s) => `-c ${s}`),
  ];
  const log = path.join(folder, 'log');
  const start = () => tell('pg_ctl', ['-D', data, '-l', log, '-w', '-o', settings.join(' '), 'start']);
  start();
  return {
    url: `postgresql://postgres@127.0.0.1:${port}/postgres`,
    log,
    start,
    kill: () => killServer(data),
    stop() {
      tell('pg_ctl', ['-D', data, '-m', 'fast', '-w', 'stop']);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The first line of postmaster.pid is the server's process; the others are its children. */
async function killServer(data: string): Promise<void> {
  const parent = Number(readFileSync(path.join(data, 'postmaster.pid'), 'utf8').split('\n')[0]);
  const { stdout } = spawnSync('ps', ['-A', '-o', 'pid=,ppid='], { encoding: 'utf8' });
  const processes = stdout.split('\n').map((line) => line.trim().split(/\s+/).map(Number));
  const children = processes.flatMap(([pid = 0, by]) => (by === parent ? [pid] : []));
  // A server does not start over a living one: the dead stay listed until the system has cleared them away.
  let left = [parent, ...children].filter((pid) => reaches(pid, 'SIGKILL'));
  for (const end = performance.now() + 10_000; left.length > 0 && performance.now() < end; ) {
    await wait(10);
    left = left.filter((pid) => reaches(pid, 0));
  }
}

function reaches(pid: number, signal: NodeJS.Signals | 0): boolean {
  try {
    return process.kill(pid, signal);
  } catch {
    return false;
  }
}

function findBinaries(): string {
  const onPath = (process.env['PATH'] ?? '')
    .split(path.delimiter)
    .map((folder) => path.join(folder, 'initdb'));
  const found = onPath.find((file) => existsSync(file));
  if (found) return path.dirname(realpathSync(found));
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : [];
  const newest = versions.find((version) => existsSync(path.join(debian, version, 'bin', 'initdb')));
  if (newest) return path.join(debian, newest, 'bin');
  throw new Error(
    'No PostgreSQL server here: install it (apt-get install postgresql), or set TEST_DATABASE_URL.',
  );
}

/** PostgreSQL refuses to run as root: then as the user its package made, or as nobody. */
function unprivileged(): { uid: number; gid: number } | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const name = spawnSync('id', ['-u', 'postgres']).status === 0 ? 'postgres' : 'nobody';
  const ask = (flag: string) => Number(spawnSync('id', [flag, name], { encoding: 'utf8' }).stdout);
  return { uid: ask('-u'), gid: ask('-g') };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => (typeof address === 'object' && address ? resolve(address.port) : reject(address)));
    });
  });
}
