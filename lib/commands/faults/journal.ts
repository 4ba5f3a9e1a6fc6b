import { closeSync, fsyncSync, openSync, readFileSync, writeSync } from 'node:fs';
import { z } from 'zod';

/** What the program said was done. `version` is the job's after it, so that the event of the same version must exist. */
const acknowledged = z.object({
  step: z.string(),
  jobId: z.string().optional(),
  number: z.string().optional(),
  kind: z.string().optional(),
  version: z.number().optional(),
  mail: z.string().optional(),
  certificate: z.string().optional(),
  invoice: z.string().optional(),
  sha256: z.string().optional(),
});
export type Acknowledged = z.infer<typeof acknowledged>;

/** A file that only grows, on the disk before the next line is written: the memory of a run, outside what is killed. */
export class Journal {
  readonly lines: Acknowledged[] = [];
  private readonly file: number;

  constructor(private readonly place: string) {
    this.file = openSync(place, 'a');
  }

  write(line: Acknowledged): void {
    writeSync(this.file, `${JSON.stringify(line)}\n`);
    fsyncSync(this.file);
    this.lines.push(line);
  }

  /** The lines as the disk has them, for the last check. */
  read(): Acknowledged[] {
    const text = readFileSync(this.place, 'utf8');
    return text
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => acknowledged.parse(JSON.parse(line)));
  }

  close(): void {
    closeSync(this.file);
  }
}
