import { fork } from 'node:child_process';
import { once } from 'node:events';

/** Migrates the database of a run and writes the workshop into it, in a process of its own with that run's settings. */
export async function fillWorld(environment: Record<string, string>): Promise<void> {
  const child = fork('lib/commands/faults/filling.ts', [], {
    execArgv: ['--conditions=react-server', '--import', 'tsx'],
    env: { ...process.env, ...environment },
  });
  const [code] = await once(child, 'exit');
  if (code !== 0) throw new Error('The workshop of the run could not be written.');
}
