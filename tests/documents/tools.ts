import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** True when a program of this name can be run here. */
export function isInstalled(program: string): boolean {
  return spawnSync(program, ['--version']).error === undefined;
}

/** Runs a program on a file of its own and gives what it printed; fails the test when the program does. */
export function runOn(bytes: Uint8Array, program: string, argumentsFor: (file: string) => string[]): string {
  const folder = mkdtempSync(join(tmpdir(), 'documents-'));
  try {
    const file = join(folder, 'drawn.pdf');
    writeFileSync(file, bytes);
    const run = spawnSync(program, argumentsFor(file), { encoding: 'utf8' });
    if (run.status !== 0) throw new Error(`${program} ended with ${run.status}: ${run.stderr}${run.stdout}`);
    return run.stdout;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A page as poppler paints it, in grey levels. */
export function paintPage(
  bytes: Uint8Array,
  page: number,
  dpi: number,
): { width: number; height: number; grey: Uint8Array } {
  const folder = mkdtempSync(join(tmpdir(), 'documents-'));
  try {
    const file = join(folder, 'drawn.pdf');
    writeFileSync(file, bytes);
    const out = join(folder, 'page');
    const options = ['-r', String(dpi), '-gray', '-singlefile', '-f', String(page), '-l', String(page)];
    const run = spawnSync('pdftoppm', [...options, file, out], { encoding: 'utf8' });
    if (run.status !== 0) throw new Error(`pdftoppm ended with ${run.status}: ${run.stderr}`);
    const picture = readFileSync(`${out}.pgm`);
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(picture.subarray(0, 40).toString('latin1'));
    if (!head) throw new Error('pdftoppm wrote no grey picture');
    return { width: Number(head[1]), height: Number(head[2]), grey: picture.subarray(head[0].length) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
