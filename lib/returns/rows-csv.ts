import { stringify } from 'csv-stringify/sync';
import { guardText } from '@/lib/catalogue/rules/list-cells';
import { decimalText } from '@/lib/money/amount';
import type { CoverClock } from './cover-sql';
import type { Narrowing } from './groupings';
import { type CoverRow, type RowsFrom, readRows } from './read-rows';

const HEADS = [
  'Certificate',
  'Line',
  'Kind',
  'What',
  'Job',
  'Repair',
  'Model',
  'Part',
  'Lot',
  'Supplier',
  'Policy',
  'Sent back on',
  'Cover from',
  'Watched until',
  'Days at risk',
  'Came back on',
  'Claim',
  'Cause',
];

export type CsvDepth = { currency: string; hasCost: boolean; hasPeople: boolean };

/**
 * The rows behind a figure as a CSV file (RFC 4180, UTF-8 with a byte order mark), some thousands at a time, each
 * lot beginning after the last row of the one before, so that a hundred thousand jobs never lie in memory at once and none is
 * skipped or told twice when a certificate is issued meanwhile. No cell begins like a formula. A cost that is not known is left
 * empty: 0 would be read as free.
 */
export async function* rowsCsv(clock: CoverClock, narrowing: Narrowing, depth: CsvDepth) {
  const heads = [...HEADS, ...(depth.hasCost ? [`Cost, ${depth.currency}`] : []), ...peopleHead(depth)];
  yield stringify([heads], { bom: true, record_delimiter: 'windows' });
  let from: RowsFrom = { skip: 0 };
  for (;;) {
    const rows: CoverRow[] = await readRows(clock, narrowing, { ...from, take: ROWS_AT_ONCE });
    if (rows.length > 0)
      yield stringify(
        rows.map((row) => cellsOf(row, depth)),
        { record_delimiter: 'windows' },
      );
    const last = rows.at(-1);
    if (!last || rows.length < ROWS_AT_ONCE) return;
    from = { after: last };
  }
}

const ROWS_AT_ONCE = 5_000;

function peopleHead({ hasPeople }: CsvDepth): string[] {
  return hasPeople ? ['Most of the work by'] : [];
}

function cellsOf(row: CoverRow, { currency, hasCost, hasPeople }: CsvDepth): (string | number)[] {
  return [
    row.certificate,
    row.key,
    row.kind,
    guardText(row.description),
    row.jobNumber,
    guardText(row.repair),
    guardText(row.model),
    guardText(row.part ?? ''),
    guardText(row.lot ?? ''),
    guardText(row.supplier ?? ''),
    guardText(row.policy),
    row.issuedOn,
    row.startsOn,
    row.observedUntil,
    row.daysAtRisk,
    row.returnedOn ?? '',
    row.claimNumber ?? '',
    row.cause ?? '',
    ...(hasCost ? [row.costMinor === null ? '' : decimalText(row.costMinor, currency)] : []),
    ...(hasPeople ? [guardText(row.technician ?? '')] : []),
  ];
}
