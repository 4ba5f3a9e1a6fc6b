/*
 * A spreadsheet runs a cell that begins with one of these as a formula (OWASP ASVS 5.0, 1.2.10 names =, +, -, @ and tab;
 * carriage return, line feed and the full-width forms from memory). An apostrophe in front makes it text.
 */
const RUNS = '[=+\\-@\\t\\r\\n\\uff1d\\uff0b\\uff0d\\uff20]';
const NEEDS_GUARD = new RegExp(`^'*${RUNS}`);
const IS_GUARDED = new RegExp(`^'+${RUNS}`);

/** A text as a cell that no spreadsheet runs: '=1+1' is "'=1+1". openText gives back exactly what was there. */
export function guardText(text: string): string {
  return NEEDS_GUARD.test(text) ? `'${text}` : text;
}

/** A guarded cell without its guard: "'=1+1" is '=1+1'; other cells stay as they are, "'tis" too. */
export function openText(cell: string): string {
  return IS_GUARDED.test(cell) ? cell.slice(1) : cell;
}

/**
 * Entries as one cell, separated by semicolons, each guarded: ['USB cable', 'Lid'] is 'USB cable; Lid'. A semicolon or
 * backslash inside an entry gets a backslash in front.
 */
export function joinEntries(entries: readonly string[]): string {
  return entries.map((entry) => guardText(entry).replace(/[\\;]/g, '\\$&')).join('; ');
}

/**
 * The entries of a cell, without their guards; empty ones and repeats are dropped, a line break separates too:
 * 'USB cable; Lid;' is ['USB cable', 'Lid'], 'a\\; b' is ['a; b'].
 */
export function splitEntries(cell: string): string[] {
  const pieces = cell.match(/(?:\\[\s\S]|[^;\n\\]|\\$)+/g) ?? [];
  const entries = pieces.map((piece) => openText(piece.trim().replace(/\\([\s\S])/g, '$1')));
  return [...new Set(entries)].filter((entry) => entry !== '');
}

/** A part that a repair usually needs, by its code. */
export type PartNeed = { code: string; quantity: number };

/** 'USB-C-24', 'DIN-5 x2': a code, and how many pieces where it is more than one. */
export function partEntry({ code, quantity }: PartNeed): string {
  return quantity === 1 ? code : `${code} x${quantity}`;
}

/** A part as partEntry writes it, read back; a quantity of 0 for 'DIN-5 x0' is for the caller to refuse. */
export function readPartEntry(entry: string): PartNeed {
  const found = /^(.*\S)\s+[x×](\d{1,6})$/i.exec(entry.trim());
  if (!found) return { code: entry.trim(), quantity: 1 };
  return { code: found[1] ?? '', quantity: Number(found[2]) };
}
