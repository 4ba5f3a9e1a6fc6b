import { randomUUID } from 'node:crypto';
import type { Tx } from '@/lib/db/transaction';
import type { SheetChange } from './rules/plan-checks';

/**
 * Writes the next version of every sheet of a plan without problems, inside the caller's transaction, by one statement for each table
 * (write-import.ts tells why). Two that write the same version meet at the unique index.
 */
export async function writeImportChecks(tx: Tx, changes: readonly SheetChange[], now: Date): Promise<void> {
  if (changes.length === 0) return;
  const sheets = changes.map(({ repairId, version, checks }) => ({
    id: randomUUID(),
    repairId,
    version,
    checks,
  }));
  const checks = sheets.flatMap(({ id, checks: all }) =>
    all.map((check, i) => ({ ...check, sheetId: id, position: i + 1 })),
  );
  await tx.$executeRaw`
    INSERT INTO "check_sheet" ("id", "repairId", "version", "createdAt")
    SELECT "id", "repairId", "version", ${now}::timestamptz
    FROM jsonb_to_recordset(${JSON.stringify(sheets)}::jsonb) AS v("id" text, "repairId" text, "version" int)`;
  await tx.$executeRaw`
    INSERT INTO "check_item" ("id", "sheetId", "position", "kind", "label", "help", "unit", "low", "high", "choices", "passing",
      "lesson", "caution", "pinTable")
    SELECT gen_random_uuid()::text, "sheetId", "position", "kind", "label", "help", "unit", "low", "high", "choices", "passing",
      "lesson", "caution", "pinTable"
    FROM jsonb_to_recordset(${JSON.stringify(checks)}::jsonb) AS v(
      "sheetId" text, "position" int, "kind" text, "label" text, "help" text, "unit" text, "low" float8, "high" float8,
      "choices" text[], "passing" text[], "lesson" text, "caution" text, "pinTable" text)`;
}
