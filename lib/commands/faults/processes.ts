import { spawnSync } from 'node:child_process';
import { setTimeout as wait } from 'node:timers/promises';

/** Every process that was started by this one, directly or by one of those. */
export function processesBelow(pid: number): number[] {
  const { stdout } = spawnSync('ps', ['-A', '-o', 'pid=,ppid='], { encoding: 'utf8' });
  const rows = stdout.split('\n').map((line) => line.trim().split(/\s+/).map(Number));
  const below = (parent: number): number[] =>
    rows.flatMap(([child = 0, by]) => (by === parent ? [child, ...below(child)] : []));
  return below(pid);
}

/** Waits until these processes have ended; those that still live after `patience` ms. */
export async function untilGone(pids: readonly number[], patience: number): Promise<number[]> {
  let left = pids.filter(lives);
  for (const end = performance.now() + patience; left.length > 0 && performance.now() < end; ) {
    await wait(50);
    left = left.filter(lives);
  }
  return left;
}

/** The dead stay listed, as Z, until whoever started them has asked how they ended. */
function lives(pid: number): boolean {
  const { stdout } = spawnSync('ps', ['-o', 'stat=', '-p', String(pid)], { encoding: 'utf8' });
  return stdout.trim() !== '' && !stdout.startsWith('Z');
}
