import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

/** A process and all that it has started, as they are now. */
function treeOf(pid: number): { pid: number; kilobytes: number }[] {
  const { stdout } = spawnSync('ps', ['-A', '-o', 'pid=,ppid=,rss='], { encoding: 'utf8' });
  const rows = stdout.split('\n').map((line) => line.trim().split(/\s+/).map(Number));
  const below = (parent: number): number[][] =>
    rows.filter(([, by]) => by === parent).flatMap((row) => [row, ...below(row[0] ?? -1)]);
  const own = rows.filter(([id]) => id === pid);
  return [...own, ...below(pid)].map(([id = 0, , kilobytes = 0]) => ({ pid: id, kilobytes }));
}

/** Resident memory of a process and all that it has started, MB. */
export function memoryOf(pid: number): number {
  return treeOf(pid).reduce((sum, { kilobytes }) => sum + kilobytes, 0) / 1024;
}

/**
 * Processor's milliseconds that a process and all that it has started have used, in steps of 10; NaN where the system does not
 * tell. Fields 14 and 15 of /proc/PID/stat, in hundredths of a second (proc(5)); the second field may hold spaces.
 */
export function processorTimeOf(pid: number): number {
  if (!existsSync('/proc/self/stat')) return Number.NaN;
  const times = treeOf(pid).map(({ pid: each }) => {
    const file = `/proc/${each}/stat`;
    if (!existsSync(file)) return 0;
    const fields = readFileSync(file, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    return Number(fields[11]) + Number(fields[12]);
  });
  return times.reduce((sum, time) => sum + time, 0) * 10;
}
