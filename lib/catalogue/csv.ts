import { CsvError, parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import type { FileProblem, FileRow, Layout } from './rules/file-layout';
import { headsIn, readLines } from './rules/file-lines';
import { guardText } from './rules/list-cells';

/**
 * Rows as the text of a CSV file: RFC 4180, comma, CRLF, with a byte order mark, by which spreadsheets know that it is UTF-8.
 * No cell begins like a formula.
 */
export function writeCsv<K extends string>(rows: readonly Record<K, string>[], layout: Layout<K>): string {
  const lines = rows.map((cells) =>
    layout.map(({ key, kind }) => (kind === 'list' ? cells[key] : guardText(cells[key]))),
  );
  return stringify([layout.map(({ head }) => head), ...lines], {
    bom: true,
    record_delimiter: 'windows',
    // A lone line break inside a cell is a break too for most readers.
    quoted_match: /[\r\n;]/,
  });
}

/**
 * Reads the text of a CSV file with commas or semicolons, with or without a byte order mark. Quotation marks that do not match end
 * the reading: they are told as a fault of the row they were found in.
 */
export function readCsv<K extends string>(
  text: string,
  layout: Layout<K>,
): { rows: FileRow<K>[]; problems: FileProblem<K>[] } {
  const delimiter = headsBy(text, ';', layout) > headsBy(text, ',', layout) ? ';' : ',';
  try {
    return readLines(linesOf(text, delimiter), layout);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { rows: [], problems: [quoteProblem(error)] };
  }
}

/** How many headings of a layout a text begins with, whichever sign separates them. */
export function headsFound<K extends string>(text: string, layout: Layout<K>): number {
  return Math.max(headsBy(text, ';', layout), headsBy(text, ',', layout));
}

function linesOf(text: string, delimiter: string, to?: number): string[][] {
  return parse(text, { bom: true, delimiter, relax_column_count: true, ...(to ? { to } : {}) });
}

function headsBy<K extends string>(text: string, delimiter: string, layout: Layout<K>): number {
  try {
    return headsIn(linesOf(text, delimiter, 1)[0] ?? [], layout);
  } catch {
    return 0;
  }
}

function quoteProblem(error: CsvError): { row: number; column: null; message: string } {
  const records = typeof error['records'] === 'number' ? error['records'] : 0;
  return {
    row: records + 1,
    column: null,
    message: 'The quotation marks do not match, here or further up, so the file cannot be read',
  };
}
