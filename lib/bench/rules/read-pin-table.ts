import type { Pin, PinTable } from './pin-table';

export type TableProblem = { line: number; message: string };
export type ReadTable = {
  pins: Pin[];
  isFacing: boolean;
  alsoNear: [string, string][];
  problems: TableProblem[];
};

/** More contacts than that no connector of the trade has (common practice, no source). */
const MOST_PINS = 100;
const PIN_FORM = /^[A-Za-z0-9][A-Za-z0-9+\-_.]{0,7}$/;
const MOST_LETTERS = 30;

/**
 * Reads a pin table as it is pasted, one pin a line: pin, name, net, row, position, and 'unused' where no circuit is behind it.
 * Commas, semicolons, tabs and upright strokes separate, or spaces where a line has none of them. What is missing is taken as:
 * name the pin itself, net the name, row 1, position the next of its row. Beside pins there may be lines 'facing' (rows face each
 * other), 'near 1 3' (neighbours that rows do not show) and remarks after '#'. A line of headings is passed over.
 * Refuses by value, by line: a pin twice, two pins on one place, a place that is no whole number, unknown pins called near.
 * Example: '1 VBUS\\n2 D-' gives pins 1 and 2 side by side in row 1.
 */
export function readPinTable(text: string): ReadTable {
  const table: ReadTable = { pins: [], isFacing: false, alsoNear: [], problems: [] };
  const near: { line: number; pins: string[] }[] = [];
  text.split(/\r?\n/).forEach((raw, at) => {
    const cells = cellsOf(raw.replace(/#.*$/, ''));
    const line = at + 1;
    const [first = ''] = cells;
    if (cells.length === 0 || (table.pins.length === 0 && /^pin$/i.test(first))) return;
    if (/^facing$/i.test(first)) table.isFacing = true;
    else if (/^near$/i.test(first)) near.push({ line, pins: cells.slice(1) });
    else readPin(table, cells, line);
  });
  for (const { line, pins } of near) readNear(table, pins, line);
  if (table.problems.length === 0 && table.pins.length < 2)
    table.problems.push({ line: 1, message: 'Give at least two pins, one a line.' });
  if (table.pins.length > MOST_PINS)
    table.problems.push({ line: MOST_PINS + 1, message: `A table holds at most ${MOST_PINS} pins.` });
  return table;
}

function cellsOf(line: string): string[] {
  const cells = /[,;\t|]/.test(line) ? line.split(/[,;\t|]/) : line.trim().split(/\s+/);
  const trimmed = cells.map((cell) => cell.trim());
  while (trimmed.length > 0 && trimmed.at(-1) === '') trimmed.pop();
  return trimmed;
}

function readPin(table: ReadTable, cells: readonly string[], line: number): void {
  const wrong = (message: string) => table.problems.push({ line, message });
  const isUnused = /^unused$/i.test(cells.at(-1) ?? '');
  const [pin = '', name = '', net = '', rowText = '', positionText = '', ...rest] = isUnused
    ? cells.slice(0, -1)
    : cells;
  if (!PIN_FORM.test(pin)) {
    wrong(`“${pin}” is no pin: use up to eight letters and digits, like A4 or 17.`);
    return;
  }
  if (rest.length > 0) wrong('There is more on this line than pin, name, net, row and position.');
  if (name.length > MOST_LETTERS || net.length > MOST_LETTERS)
    wrong(`Keep name and net to ${MOST_LETTERS} letters.`);
  if (table.pins.some((other) => other.pin === pin)) wrong(`Pin ${pin} stands there twice.`);
  const row = rowText === '' ? 1 : placeOf(rowText);
  if (row === null) wrong(`“${rowText}” is no row: use a whole number from 1 to 99.`);
  const inRow = table.pins.filter((other) => other.row === row).map((other) => other.position);
  const position = positionText === '' ? Math.max(0, ...inRow) + 1 : placeOf(positionText);
  if (position === null) wrong(`“${positionText}” is no position: use a whole number from 1 to 99.`);
  else if (inRow.includes(position))
    wrong(`Row ${row}, position ${position} is taken by another pin already.`);
  const label = name || pin;
  table.pins.push({
    pin,
    name: name === pin ? '' : name,
    net: net || label,
    row: row ?? 1,
    position: position ?? 1,
    ...(isUnused ? { isUnused } : {}),
  });
}

function placeOf(text: string): number | null {
  return /^[1-9]\d?$/.test(text) ? Number(text) : null;
}

function readNear(table: ReadTable, pins: readonly string[], line: number): void {
  const [a, b, ...rest] = pins;
  if (a === undefined || b === undefined || rest.length > 0 || a === b) {
    table.problems.push({ line, message: 'Write “near” and the two pins, like: near 1 3.' });
    return;
  }
  for (const pin of [a, b]) {
    if (!table.pins.some((known) => known.pin === pin)) {
      table.problems.push({ line, message: `There is no pin ${pin}.` });
      return;
    }
  }
  table.alsoNear.push([a, b]);
}

/** A pin table of the workshop's own from its stored text; null where the text could not be read whole. */
export function ownPinTable(row: {
  id: string;
  name: string;
  source: string;
  text: string;
}): PinTable | null {
  const { pins, isFacing, alsoNear, problems } = readPinTable(row.text);
  if (problems.length > 0) return null;
  return { key: row.id, name: row.name, pins, isFacing, alsoNear, note: row.source };
}
