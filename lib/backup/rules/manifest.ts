import { z } from 'zod';

/** Raised when a program could misread what an older one wrote; newer tables alone do not raise it. */
export const FORMAT = 1;

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const count = z.int().min(0);
const entry = z.object({ name: z.string().min(1), size: count, sha256 });

export const manifestShape = z.object({
  format: z.literal(FORMAT),
  madeAt: z.iso.datetime(),
  program: z.string(),
  /** names of the migrations the tables stood at, oldest first */
  migrations: z.array(z.string()),
  /** the hash is that of the rows as lines of JSON in the order of the key, whatever database wrote them */
  tables: z.array(
    z.object({ name: z.string(), columns: z.array(z.string()), rows: count, sha256, parts: z.array(entry) }),
  ),
  sequences: z.array(z.object({ name: z.string(), last: z.string(), isCalled: z.boolean() })),
  /** photos and papers, by the key that the rows name; absent where a move left them in their place */
  files: z.array(z.object({ key: z.string(), entry })).optional(),
  /** named by a row and not in the store when it was read */
  missing: z.array(z.string()),
  /** in the store with another hash than the row that names it has; saved as they were */
  changed: z.array(z.string()),
  /** what tells the app's secret from another without telling it, and whether it lies in this file */
  secret: z.object({ mark: sha256, isInside: z.boolean() }),
});

export type Manifest = z.output<typeof manifestShape>;
export type Entry = z.output<typeof entry>;

/** Every entry of a backup that has a hash in its manifest: parts of tables, then files. */
export function entriesOf(manifest: Pick<Manifest, 'tables' | 'files'>): Entry[] {
  return [
    ...manifest.tables.flatMap((table) => table.parts),
    ...(manifest.files ?? []).map((file) => file.entry),
  ];
}

/**
 * What keeps a backup from being loaded by a program with these migrations, as a sentence; null when nothing does.
 * Takes both lists oldest first. The program must know every migration of the backup, in the same order.
 *
 * migrationProblem(['a', 'b'], ['a', 'b', 'c']) -> null; migrationProblem(['a', 'x'], ['a', 'b']) -> a sentence with x
 */
export function migrationProblem(ofBackup: readonly string[], ofProgram: readonly string[]): string | null {
  const odd = ofBackup.find((name, place) => ofProgram[place] !== name);
  if (odd === undefined) return null;
  return `The backup was made by another version of the program: its migration ${odd} is not known here. Use that version or a newer one.`;
}
