import { tryImport } from '@/lib/catalogue/import-file';
import type { FileKind } from '@/lib/catalogue/rules/file-kinds';

async function tryKind<K extends FileKind>(text: string, kind: K) {
  const run = await tryImport(text);
  if (run.kind !== kind) throw new Error(`this is the file of ${run.kind}`);
  return run as Extract<typeof run, { kind: K }>;
}

/** What a text would do as the file of the catalogue, of check sheets, of policies; throws for another one. */
export const tryCatalogue = (text: string) => tryKind(text, 'catalogue');
export const tryChecks = (text: string) => tryKind(text, 'checks');
export const tryPolicies = (text: string) => tryKind(text, 'policies');
