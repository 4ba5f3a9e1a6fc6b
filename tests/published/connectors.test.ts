import { describe, expect, test } from 'vitest';
import { connectorSheet } from '@/lib/bench/rules/connector-sheet';
import type { PinTable } from '@/lib/bench/rules/pin-table';
import { PIN_TABLES } from '@/lib/bench/rules/pin-tables/all';
import { dcJack21 } from '@/lib/bench/rules/pin-tables/dc-jack-2-1-mm';
import { hdmiTypeA } from '@/lib/bench/rules/pin-tables/hdmi-type-a';
import { midiDin5 } from '@/lib/bench/rules/pin-tables/midi-din-5';
import { trrs35 } from '@/lib/bench/rules/pin-tables/trrs-3-5-mm';
import { usbMicroB } from '@/lib/bench/rules/pin-tables/usb-micro-b';
import { usbTypeC } from '@/lib/bench/rules/pin-tables/usb-type-c';
import { judgeProbes, probeFaults, probesOf, readsOf } from '@/lib/bench/rules/probes';

const pinOf = (table: PinTable, name: string) => {
  const pin = table.pins.find((candidate) => candidate.pin === name);
  if (!pin) throw new Error(`${table.key} has no pin ${name}`);
  return pin;
};
const pinsOfNet = (table: PinTable, net: string) =>
  table.pins.filter((pin) => pin.net === net).map((pin) => pin.pin);
const pairs = (list: readonly { a: { pin: string }; b: { pin: string } }[]) =>
  list.map(({ a, b }) => `${a.pin}-${b.pin}`);

describe('USB Type-C receptacle (ST UM2191 and USB summary pages)', () => {
  test('24 pins; VBUS is A4 A9 B4 B9, GND is A1 A12 B1 B12', () => {
    expect(usbTypeC.pins).toHaveLength(24);
    expect(pinsOfNet(usbTypeC, 'VBUS')).toEqual(['A4', 'A9', 'B4', 'B9']);
    expect(pinsOfNet(usbTypeC, 'GND')).toEqual(['A1', 'A12', 'B1', 'B12']);
  });

  test('A(n) and B(n) carry the same function with 1 and 2 swapped', () => {
    for (let n = 1; n <= 12; n += 1) {
      const swapped = pinOf(usbTypeC, `A${n}`).name.replace(/[12]/, (digit) => (digit === '1' ? '2' : '1'));
      expect(pinOf(usbTypeC, `B${n}`).name).toBe(swapped);
    }
  });

  test('A(n) faces B(13 - n)', () => {
    for (let n = 1; n <= 12; n += 1) {
      expect(pinOf(usbTypeC, `A${n}`).position).toBe(pinOf(usbTypeC, `B${13 - n}`).position);
    }
  });

  test('of 34 neighbouring pairs only the facing grounds and supplies may read joined', () => {
    const sheet = connectorSheet(usbTypeC);
    expect(pairs(sheet.mayBeJoined)).toEqual(['A1-B12', 'A4-B9', 'A9-B4', 'A12-B1']);
    expect(sheet.mustBeOpen).toHaveLength(30);
    expect(pairs(sheet.mustBeOpen)).toEqual(expect.arrayContaining(['A4-A5', 'A6-A7', 'A6-B7', 'B4-B5']));
    expect(sheet.continuity).toHaveLength(24);
  });
});

describe('HDMI type A (four independent published pinouts)', () => {
  test('shields at 2, 5, 8, 11 and ground at 17 are one net', () => {
    expect(pinsOfNet(hdmiTypeA, 'ground')).toEqual(['2', '5', '8', '11', '17']);
    for (const shield of ['2', '5', '8', '11']) expect(pinOf(hdmiTypeA, shield).name).toMatch(/shield$/);
  });

  test.each([
    ['1', 'D2+'],
    ['3', 'D2-'],
    ['10', 'CK+'],
    ['12', 'CK-'],
    ['13', 'CEC'],
    ['15', 'SCL'],
    ['16', 'SDA'],
    ['18', '+5 V'],
  ])('pin %s is %s', (pin, name) => {
    expect(pinOf(hdmiTypeA, pin).name).toBe(name);
  });

  test('its 18 neighbouring pairs must all be open', () => {
    const sheet = connectorSheet(hdmiTypeA);
    expect(sheet.mustBeOpen).toHaveLength(18);
    expect(sheet.mayBeJoined).toEqual([]);
  });
});

describe('smaller connectors (pin tables from memory or common practice, as their files say)', () => {
  test('USB Micro-B has four pairs, all open', () => {
    expect(pairs(connectorSheet(usbMicroB).mustBeOpen)).toEqual(['1-2', '2-3', '3-4', '4-5']);
  });

  test('MIDI DIN-5 goes round the arc 1 4 2 5 3, and asks no continuity of its unused pins', () => {
    const sheet = connectorSheet(midiDin5);
    expect(pairs(sheet.mustBeOpen)).toEqual(['1-4', '4-2', '2-5', '5-3']);
    expect(sheet.continuity.map((pin) => pin.pin)).toEqual(['4', '2', '5']);
  });

  test('3.5 mm TRRS has three pairs from tip to sleeve', () => {
    expect(pairs(connectorSheet(trrs35).mustBeOpen)).toEqual(['T-R1', 'R1-R2', 'R2-S']);
  });

  test('the DC jack has its sleeve contacts joined and its centre apart from both', () => {
    const sheet = connectorSheet(dcJack21);
    expect(pairs(sheet.mayBeJoined)).toEqual(['2-3']);
    expect(pairs(sheet.mustBeOpen)).toEqual(['1-2', '1-3']);
  });
});

describe('faults found on a connector', () => {
  const sound = (table: PinTable) =>
    new Map<string, string>(probesOf(table).map((probe) => [probe.key, readsOf(probe)[0] ?? '']));
  const faults = (table: PinTable, read: Record<string, string>) => {
    const answer = judgeProbes(table, new Map([...sound(table), ...Object.entries(read)]));
    return answer.ok ? probeFaults(answer.probes) : answer.missing;
  };

  test('neighbours of different nets that read joined: VBUS beside CC1 of USB Type-C', () => {
    expect(faults(usbTypeC, { 'A4:A5': 'joined' })).toEqual(['A4 VBUS and A5 CC1 read joined']);
  });

  test('joined grounds that face each other are none', () => {
    expect(faults(usbTypeC, { 'A1:B12': 'joined' })).toEqual([]);
  });

  test('a used pin of MIDI without continuity is one, an unused pin is not asked', () => {
    expect(faults(midiDin5, { '1': 'broken', '5': 'broken' })).toEqual(['5 current sink is not continuous']);
  });
});

test.each(PIN_TABLES)('$name: every used pin is followed, and every pin has a neighbour', (table) => {
  const { mayBeJoined, mustBeOpen, continuity } = connectorSheet(table);
  const unused = table.pins.filter((pin) => pin.isUnused);
  expect(continuity.length + unused.length).toBe(table.pins.length);
  expect(continuity.filter((pin) => pin.isUnused)).toEqual([]);
  const beside = new Set([...mayBeJoined, ...mustBeOpen].flatMap(({ a, b }) => [a.pin, b.pin]));
  expect([...beside].sort()).toEqual(table.pins.map(({ pin }) => pin).sort());
});

describe('broken pin tables are refused', () => {
  const pin = { pin: '1', name: 'x', net: 'x', row: 1, position: 1 };
  const table: PinTable = { key: 't', name: 'T', pins: [pin], isFacing: false, note: '' };

  test.each([
    {
      name: 'a pin twice',
      broken: { ...table, pins: [pin, { ...pin, position: 2 }] },
      said: 'names a pin twice',
    },
    {
      name: 'two pins on one place',
      broken: { ...table, pins: [pin, { ...pin, pin: '2' }] },
      said: 'two pins on one place',
    },
    {
      name: 'a stranger called near',
      broken: { ...table, alsoNear: [['1', '9']] as const },
      said: 'an unknown pin near',
    },
  ])('$name', ({ broken, said }) => {
    expect(() => connectorSheet(broken)).toThrow(said);
  });
});
