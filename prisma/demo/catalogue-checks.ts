import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { connectorChecks } from '@/lib/bench/rules/connector-sheet';
import { mainsChecks } from '@/lib/bench/rules/mains-checks';
import type { PinTable } from '@/lib/bench/rules/pin-table';

const BLANK = {
  help: '',
  unit: null,
  low: null,
  high: null,
  choices: [],
  passing: [],
  lesson: null,
  caution: null,
};

const tick = (label: string, more: Partial<CheckDraft> = {}): CheckDraft => ({
  ...BLANK,
  kind: 'tick',
  label,
  ...more,
});

const reading = (
  label: string,
  unit: string,
  limits: [number | null, number | null],
  help = '',
): CheckDraft => ({
  ...BLANK,
  kind: 'reading',
  label,
  unit,
  low: limits[0],
  high: limits[1],
  help,
});

const choice = (label: string, passing: string[], failing: string[], help = ''): CheckDraft => ({
  ...BLANK,
  kind: 'choice',
  label,
  help,
  choices: [...passing, ...failing],
  passing,
});

const selfTest = tick('Every control, socket and light works, tried for ten minutes');
const clean = tick('No flux, fibres or solder balls left, seen under magnification', { caution: 'solvents' });
const closed = tick('Case closed, all screws in, nothing rattles');
const noise = choice('Background noise on headphones', ['silent', 'faint hiss'], ['hum', 'crackle']);

/** Limits are invented for the demonstration; those of USB supply voltage are the usual 4.75 to 5.25 V (common practice, no source). */
const supply = reading('Voltage at the socket under 500 mA load', 'V', [4.75, 5.25]);
const hold = tick('Plug holds when the cable is tilted to all four sides');

export const socketSheet = (table: PinTable): CheckDraft[] => [
  ...connectorChecks(table),
  ...(table.key.startsWith('usb') ? [supply] : []),
  hold,
  clean,
  selfTest,
  closed,
];

/** The sheet of a socket as it was before a returned unit taught the check on tilting. */
export const firstSocketSheet = (table: PinTable): CheckDraft[] =>
  socketSheet(table).filter((check) => check !== hold);

export const audioSheet = (table: PinTable): CheckDraft[] => [
  ...connectorChecks(table),
  hold,
  reading('Difference in level, left to right', 'dB', [-0.5, 0.5], '1 kHz at half volume.'),
  noise,
  clean,
  closed,
];

export const batterySheet = (wattHours: number): CheckDraft[] => [
  tick('Cell flat, dry and free of dents; leads clear of screw posts', { caution: 'lithium-cells' }),
  reading('Voltage at rest after full charge', 'V', [4.1, 4.22], 'One hour after the charger is taken off.'),
  reading('Charge current at half charge', 'mA', [300, Math.round(wattHours * 120)]),
  tick('First charge watched from start to end, case stays below 45 °C', { caution: 'lithium-cells' }),
  selfTest,
  closed,
];

export const displaySheet: CheckDraft[] = [
  choice(
    'All-white and all-black test picture',
    ['no dead point'],
    ['one or two dead points', 'line or cloud'],
  ),
  tick('Ribbon cable seated and locked, no sharp bend', { caution: 'static' }),
  reading('Supply current at full brightness', 'mA', [null, 180]),
  selfTest,
  closed,
];

export const liquidSheet: CheckDraft[] = [
  tick('No residue under shields and connectors, seen under magnification', { caution: 'solvents' }),
  reading('Leakage, supply to ground, power off', 'kΩ', [100, null]),
  reading('Supply current at idle', 'mA', [20, 160]),
  choice(
    'Under warm air for one hour',
    ['works throughout'],
    ['works, then fails', 'fails'],
    'At 40 °C, lid open.',
  ),
  noise,
  selfTest,
  closed,
];

export const switchSheet: CheckDraft[] = [
  reading('Resistance closed', 'Ω', [null, 0.2]),
  reading('Resistance open', 'MΩ', [10, null]),
  tick('Fifty presses in a row, each answered once'),
  clean,
  closed,
];

export const controlSheet: CheckDraft[] = [
  choice('Sound while turned from end to end', ['silent'], ['crackles', 'drops out']),
  reading('Difference in level, left to right', 'dB', [-1, 1], 'At a quarter, half and full.'),
  selfTest,
  closed,
];

export const keysSheet: CheckDraft[] = [
  tick('Every key or pad answers at three strengths'),
  reading('Highest contact resistance', 'Ω', [null, 150]),
  choice('Even response, played as a scale', ['even'], ['one stands out', 'several stand out']),
  clean,
  closed,
];

export const buttonCellSheet: CheckDraft[] = [
  reading('Cell voltage, fitted', 'V', [3, 3.4]),
  tick('Clock keeps time with the mains off for a night'),
  closed,
];

export const mainsSheet: CheckDraft[] = [
  ...mainsChecks(1),
  reading('Output level at full volume', 'V', [3.8, 4.2], '1 kHz into 300 Ω.'),
  noise,
  tick('Primary side closed and sleeved before power', { caution: 'mains-capacitors' }),
  closed,
];
