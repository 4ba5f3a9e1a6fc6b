import { describe, expect, test } from 'vitest';
import { connectorForm } from '@/app/workshop/(inside)/jobs/[number]/sheet/connector-form-schema';
import { readResults, textsOf } from '@/app/workshop/(inside)/jobs/[number]/sheet/read-results';
import { wireForm } from '@/app/workshop/(inside)/jobs/[number]/wire-schema';

const checks = [
  { id: 'volts', kind: 'reading' },
  { id: 'tilt', kind: 'tick' },
  { id: 'noise', kind: 'choice' },
  { id: 'usb', kind: 'connector' },
];
const read = (values: Record<string, string>, asked: string) =>
  readResults(checks, textsOf(values), asked).map(({ checkId, given }) => ({ checkId, ...given }));

describe('a posted check sheet', () => {
  const typed = { 'reading-volts': ' 4,98 ', 'tick-tilt': 'fail', 'note-noise': 'later' };

  test('enters the check whose button was pressed, and no other', () => {
    expect(read(typed, 'tilt')).toEqual([{ checkId: 'tilt', tick: false, reading: null, choice: null }]);
  });

  test('enters everything that is filled in; a note alone is none', () => {
    expect(read(typed, 'all').map((result) => result.checkId)).toEqual(['volts', 'tilt']);
    expect(read(typed, 'all')[0]).toMatchObject({ reading: 4.98 });
  });

  test('a reading over the range is told by its box or by a > before it', () => {
    const over = { checkId: 'volts', reading: 200, isOverRange: true, choice: null };
    expect(read({ 'reading-volts': '200', 'over-volts': 'yes' }, 'all')).toEqual([over]);
    expect(read({ 'reading-volts': '>200' }, 'volts')).toEqual([over]);
    expect(read({ 'over-volts': 'yes' }, 'volts')).toEqual([
      { checkId: 'volts', reading: null, choice: null },
    ]);
  });

  test('an empty check that was pressed is asked for, not left out', () => {
    expect(read({}, 'noise')).toEqual([{ checkId: 'noise', reading: null, choice: null }]);
  });

  test('a connector is entered on its own page only, a stranger not at all', () => {
    expect(read(typed, 'usb')).toEqual([]);
    expect(read(typed, 'gone')).toEqual([]);
  });
});

test('a connector sheet takes its probes and nothing else of what is posted', () => {
  const { probes, note } = connectorForm.parse({
    version: '3',
    'probe-A4:A5': 'open',
    'probe-A4': 'through',
  });
  expect([...probes]).toEqual([
    ['A4:A5', 'open'],
    ['A4', 'through'],
  ]);
  expect(note).toBe('');
});

describe('a jumper wire as typed', () => {
  const wire = { from: 'A6', to: 'R12', length: '30', diameter: '0,1', reading: '78', unit: 'milliohm' };
  test.each([
    { name: 'milliohm', over: {}, milliohms: 78 },
    { name: 'ohm', over: { reading: '0.078', unit: 'ohm' }, milliohms: 78 },
    { name: 'more than an ohm', over: { reading: '1,2', unit: 'ohm' }, milliohms: 1200 },
  ])('in $name', ({ over, milliohms }) => {
    expect(wireForm.parse({ ...wire, ...over })).toMatchObject({ lengthMm: 30, diameterUm: 100, milliohms });
  });

  test.each([
    { length: '0' },
    { length: '2.5' },
    { diameter: '3' },
    { diameter: 'thin' },
    { reading: '-1' },
    { from: ' ' },
  ])('%o is refused', (over) => {
    expect(wireForm.safeParse({ ...wire, ...over }).success).toBe(false);
  });
});
