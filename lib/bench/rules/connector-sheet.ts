import type { CheckDraft } from './check-problems';
import type { Pin, PinTable } from './pin-table';

export type PinPair = { a: Pin; b: Pin; mayBeJoined: boolean };

export type ConnectorSheet = {
  table: PinTable;
  /** Neighbouring pairs of the same net: joined or open, both are right. */
  mayBeJoined: PinPair[];
  /** Neighbouring pairs of different nets: any path between them is a fault. */
  mustBeOpen: PinPair[];
  /** Pins that must read continuous to their far end: first test pad, resistor or part behind the contact. */
  continuity: Pin[];
};

/**
 * What to probe on a connector, from its pin table: every neighbouring pair, told apart by whether it may read joined, and
 * every used pin to its far end. Neighbours stand next to each other in a row, or face each other where the table says so.
 * Refuses a table that names a pin twice, puts two pins on one place, or calls unknown pins near.
 * Example: USB Micro-B (1 to 5 in one row) gives four pairs that must be open and five pins to follow.
 */
export function connectorSheet(table: PinTable): ConnectorSheet {
  refuseTable(table);
  const pairs = neighbours(table).map(([a, b]) => ({ a, b, mayBeJoined: a.net === b.net }));
  return {
    table,
    mayBeJoined: pairs.filter((pair) => pair.mayBeJoined),
    mustBeOpen: pairs.filter((pair) => !pair.mayBeJoined),
    continuity: table.pins.filter((pin) => !pin.isUnused),
  };
}

function neighbours(table: PinTable): [Pin, Pin][] {
  const found: [Pin, Pin][] = [];
  table.pins.forEach((a, i) => {
    for (const b of table.pins.slice(i + 1)) if (isNear(a, b, table)) found.push([a, b]);
  });
  return found;
}

function isNear(a: Pin, b: Pin, table: PinTable): boolean {
  if (a.row === b.row && Math.abs(a.position - b.position) === 1) return true;
  if (table.isFacing && Math.abs(a.row - b.row) === 1 && a.position === b.position) return true;
  return (table.alsoNear ?? []).some(
    ([x, y]) => (x === a.pin && y === b.pin) || (x === b.pin && y === a.pin),
  );
}

function refuseTable({ key, pins, alsoNear = [] }: PinTable): void {
  const names = new Set(pins.map((pin) => pin.pin));
  const places = new Set(pins.map((pin) => `${pin.row}/${pin.position}`));
  if (names.size < pins.length) throw new RangeError(`Pin table ${key} names a pin twice`);
  if (places.size < pins.length) throw new RangeError(`Pin table ${key} puts two pins on one place`);
  if (alsoNear.flat().some((pin) => !names.has(pin)))
    throw new RangeError(`Pin table ${key} calls an unknown pin near`);
}

/**
 * The checks a connector adds to a sheet: every pin and neighbouring pair on its drawing, and the worst contact as a reading.
 * 0.5 ohm is common practice for a contact through flex and solder joint, no source.
 */
export function connectorChecks(table: PinTable): CheckDraft[] {
  const base = {
    unit: null,
    low: null,
    high: null,
    choices: [],
    passing: [],
    lesson: null,
    caution: 'static',
  };
  return [
    {
      ...base,
      kind: 'connector',
      label: `${table.name}: every pin and neighbouring pair`,
      help: 'Unit off, battery out of circuit. From the contact to its far end, not from the joint.',
      pinTable: table.key,
    },
    {
      ...base,
      kind: 'reading',
      label: `${table.name}: worst contact`,
      help: 'Highest resistance from a contact to its far end, leads zeroed.',
      unit: 'Ω',
      // A reading below nothing says that the leads were not zeroed.
      low: 0,
      high: 0.5,
    },
  ];
}
