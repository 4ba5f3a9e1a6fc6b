import { CsvError, parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { guardText } from './rules/list-cells';
import { type Cells, COLUMN_KEYS, kindOf, type ListSettings } from './rules/list-columns';
import { headsIn, listHeads, readLines } from './rules/list-file';
import type { ListProblem, ListRow } from './rules/list-rows';

/**
 * Rows as the text of a CSV file: RFC 4180, comma, CRLF, with a byte order mark, by which spreadsheets know that it is UTF-8.
 * No cell begins like a formula.
 */
export function writeCsv(rows: readonly Cells[], settings: ListSettings): string {
  const lines = rows.map((cells) =>
    COLUMN_KEYS.map((key) => (kindOf(key) === 'list' ? cells[key] : guardText(cells[key]))),
  );
  return stringify([listHeads(settings), ...lines], {
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
export function readCsv(text: string, settings: ListSettings): { rows: ListRow[]; problems: ListProblem[] } {
  const delimiter = delimiterOf(text, settings);
  try {
    return readLines(linesOf(text, delimiter), settings);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { rows: [], problems: [quoteProblem(error)] };
  }
}

function linesOf(text: string, delimiter: string, to?: number): string[][] {
  return parse(text, { bom: true, delimiter, relax_column_count: true, ...(to ? { to } : {}) });
}

function delimiterOf(text: string, settings: ListSettings): string {
  const known = (delimiter: string) => {
    try {
      return headsIn(linesOf(text, delimiter, 1)[0] ?? [], settings);
    } catch {
      return 0;
    }
  };
  return known(';') > known(',') ? ';' : ',';
}

function quoteProblem(error: CsvError): ListProblem {
  const records = typeof error['records'] === 'number' ? error['records'] : 0;
  return {
    row: records + 1,
    column: null,
    message: 'The quotation marks do not match, here or further up, so the file cannot be read',
  };
}
