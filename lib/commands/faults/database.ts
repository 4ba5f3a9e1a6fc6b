import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { startThrowawayPostgres } from '@/lib/commands/throwaway-postgres';
import { embeddedUrl } from '@/lib/db/embedded-place';

export type Kind = 'embedded' | 'server';

/** A database that can be killed and opened again on the same files. */
export type Database = {
  kind: Kind;
  url: string;
  /** every process of it, with SIGKILL; resolves when they are gone */
  kill(): Promise<void>;
  open(): Promise<void>;
  stop(): Promise<void>;
};

export function openDatabase(kind: Kind, folder: string): Promise<Database> {
  return kind === 'embedded' ? openEmbedded(folder) : openServer();
}

async function openEmbedded(folder: string): Promise<Database> {
  let child: ChildProcess | undefined;
  const open = async () => {
    child = fork('lib/commands/faults/embedded-database.ts', [folder], { execArgv: ['--import', 'tsx'] });
    const opening = child;
    const said = await Promise.race([once(opening, 'message'), once(opening, 'exit')]);
    if (said[0] !== 'open') throw new Error('The embedded database did not open.');
  };
  const gone = async (how: (child: ChildProcess) => void) => {
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const ended = once(child, 'exit');
    how(child);
    await ended;
  };
  await open();
  return {
    kind: 'embedded',
    url: embeddedUrl(folder),
    open,
    kill: () => gone((it) => it.kill('SIGKILL')),
    stop: () => gone((it) => it.send('stop')),
  };
}

async function openServer(): Promise<Database> {
  const server = await startThrowawayPostgres({ isCareful: true });
  return {
    kind: 'server',
    url: server.url,
    open: async () => server.start(),
    kill: server.kill,
    stop: async () => server.stop(),
  };
}
