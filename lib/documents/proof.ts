import { sheetNames } from '@/lib/bench/rules/job-sheets';
import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { flowList, flowText } from '@/lib/documents/kit/flow';
import { styles } from '@/lib/documents/kit/ink';
import { fullColumn, section } from '@/lib/documents/kit/section';
import type { Sheet } from '@/lib/documents/kit/sheet';
import { table } from '@/lib/documents/kit/table';

export type FittedPart = { name: string; quantity: number; lot: string | null };

export type ConnectorProof = Omit<CheckReading, 'reading' | 'unit' | 'limits'> & {
  /** '24 pins through, 30 pairs open', and each fault. */
  lines: readonly string[];
};

/** A wire laid in the place of a broken trace. */
export type LaidWire = {
  /** From where to where, its length and diameter. */
  what: string;
  /** As measured, and the most that the copper and two sound joints read. */
  milliohms: number;
  expected: number;
};

export type CheckReading = {
  name: string;
  reading: string;
  unit: string;
  limits: string;
  result: 'pass' | 'fail' | 'noted';
  on: Day;
  /** Initials of who took it. */
  by: string;
};

export type Proof = {
  work: readonly string[];
  parts: readonly FittedPart[];
  wires: readonly LaidWire[];
  /** those of every repair that was proved, that of the repair the job is under first */
  checkSheets: readonly { repair: string; version: number }[];
  /** In the order taken; a reading that failed and was taken again appears twice. */
  readings: readonly CheckReading[];
  /** Connector sheets: what the probes read, in one line with the faults. */
  connectors: readonly ConnectorProof[];
  technician: { initials: string; provedOn: Day };
};

const results: Record<CheckReading['result'], string> = {
  pass: 'Pass',
  fail: 'Fail, redone',
  noted: 'Noted',
};

/** The second page: what was done, what was fitted, and the readings that prove it. */
export function drawProof(sheet: Sheet, proof: Proof, locale: string): void {
  flowText(sheet, sheet.root, 'H2', 'The work behind the promise', fullColumn(sheet), { style: styles.lead });
  section(sheet, 'Work done', (part, column) => flowList(sheet, part, proof.work, 'dash', column), {
    level: 'H3',
  });
  section(
    sheet,
    'Parts fitted',
    (part, column) => {
      if (proof.parts.length === 0) {
        flowText(sheet, part, 'P', 'No parts were fitted.', column);
        return;
      }
      const columns = [
        { head: 'Part', share: 5 },
        { head: 'Lot', share: 3, face: 'mono' },
        { head: 'Quantity', share: 1.6, align: 'right' },
      ] as const;
      const rows = proof.parts.map((fitted) => ({
        cells: [fitted.name, fitted.lot ?? 'not known', String(fitted.quantity)],
      }));
      table(sheet, part, columns, rows, column);
    },
    { level: 'H3' },
  );
  if (proof.wires.length > 0) drawWires(sheet, proof.wires);
  const sheetName = `Bench checks: ${sheetNames(proof.checkSheets)}`;
  section(
    sheet,
    sheetName,
    (part, column) => {
      const columns = [
        { head: 'Check', share: 4 },
        { head: 'Reading', share: 1.9, align: 'right', face: 'mono' },
        { head: 'Limits', share: 2.2 },
        { head: 'Result', share: 1.7 },
        { head: 'When', share: 1.7 },
        { head: 'By', share: 0.8 },
      ] as const;
      const rows = proof.readings.map((check) => ({
        cells: [
          check.name,
          check.unit === '' ? check.reading : `${check.reading} ${check.unit}`,
          check.limits,
          results[check.result],
          formatDay(check.on, locale, 'short'),
          check.by,
        ],
      }));
      table(sheet, part, columns, rows, column);
    },
    { wide: true, level: 'H3' },
  );
  if (proof.connectors.length > 0) drawConnectors(sheet, proof.connectors, locale);
  section(
    sheet,
    'Signed off',
    (part, column) => {
      const { initials, provedOn } = proof.technician;
      const by = initials === '' ? '' : ` by ${initials}`;
      const text = `Proved and signed off${by} on ${formatDay(provedOn, locale, 'short')}.`;
      flowText(sheet, part, 'P', text, column);
    },
    { level: 'H3' },
  );
}

function drawWires(sheet: Sheet, wires: readonly LaidWire[]): void {
  section(
    sheet,
    'Jumper wires laid',
    (part, column) => {
      const columns = [
        { head: 'Wire', share: 5 },
        { head: 'Reading', share: 2, align: 'right', face: 'mono' },
        { head: 'Expected at most', share: 2.4, align: 'right', face: 'mono' },
      ] as const;
      const rows = wires.map((wire) => ({
        cells: [wire.what, `${wire.milliohms} mΩ`, `${wire.expected} mΩ`],
      }));
      table(sheet, part, columns, rows, column);
    },
    { level: 'H3' },
  );
}

function drawConnectors(sheet: Sheet, connectors: readonly ConnectorProof[], locale: string): void {
  section(
    sheet,
    'Connectors, probed pin by pin',
    (part, column) => {
      const columns = [
        { head: 'Connector', share: 3.4 },
        { head: 'What the probes read', share: 5 },
        { head: 'Result', share: 1.7 },
        { head: 'When', share: 1.7 },
        { head: 'By', share: 0.8 },
      ] as const;
      const rows = connectors.map((check) => ({
        cells: [
          check.name,
          check.lines.join('; '),
          results[check.result],
          formatDay(check.on, locale, 'short'),
          check.by,
        ],
      }));
      table(sheet, part, columns, rows, column);
    },
    { wide: true, level: 'H3' },
  );
}
