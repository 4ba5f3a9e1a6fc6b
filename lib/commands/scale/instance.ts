import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';

export type Instance = {
  name: string;
  port: number;
  /** of the launcher, whose child the pages are */
  pid: () => number;
  /** Everything it has written, through all its restarts. */
  log: () => string;
  start: () => Promise<void>;
  /** Tells it to stop, waits, and returns its exit code and how long it took. */
  stop: () => Promise<{ code: number | null; ms: number }>;
};

/** One `npm start` with settings of its own, to be started and stopped. Run from the folder of the project. */
export function instance(name: string, port: number, settings: Record<string, string>): Instance {
  let child: ChildProcess | undefined;
  let said = '';
  const env = { ...process.env, HOST: '127.0.0.1', PORT: String(port), ...settings };

  async function start() {
    child = spawn(
      process.execPath,
      ['--conditions=react-server', '--import', 'tsx', 'lib/commands/start.ts'],
      { env, stdio: ['ignore', 'pipe', 'pipe'] },
    );
    for (const stream of [child.stdout, child.stderr]) {
      stream?.on('data', (text: Buffer) => {
        said += text;
      });
    }
    const end = performance.now() + 240_000;
    while (!(await isReady(port))) {
      if (child.exitCode !== null || performance.now() > end)
        throw new Error(`${name} did not start:\n${said}`);
      await wait(100);
    }
  }

  async function stop() {
    const began = performance.now();
    const ending = child;
    if (!ending || ending.exitCode !== null || ending.signalCode !== null)
      return { code: ending?.exitCode ?? null, ms: 0 };
    const exit = once(ending, 'exit');
    ending.kill('SIGTERM');
    await exit;
    return { code: ending.exitCode, ms: Math.round(performance.now() - began) };
  }

  const pid = () => child?.pid ?? 0;
  return { name, port, pid, log: () => said, start, stop };
}

export async function isReady(port: number): Promise<boolean> {
  const answer = await fetch(`http://127.0.0.1:${port}/ready`).catch(() => undefined);
  await answer?.text();
  return answer?.ok === true;
}
