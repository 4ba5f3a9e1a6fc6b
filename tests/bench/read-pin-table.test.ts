import { describe, expect, test } from 'vitest';
import { connectorSheet } from '@/lib/bench/rules/connector-sheet';
import { PIN_TABLES } from '@/lib/bench/rules/pin-tables/all';
import { ownPinTable, readPinTable } from '@/lib/bench/rules/read-pin-table';

const problems = (text: string) =>
  readPinTable(text).problems.map(({ line, message }) => `${line}: ${message}`);

describe('a pasted pin table', () => {
  test.each([
    ['commas', 'pin,name,net,row,position\n1,+9 V,supply,1,1\n2,ground,ground,1,2'],
    ['semicolons and spaces', '1 ; +9 V; supply ; 1; 1\n2; ground;;;'],
    ['tabs, as a spreadsheet copies them', '1\t+9 V\tsupply\t1\t1\r\n2\tground\r\n'],
    ['upright strokes', '1 | +9 V | supply\n# the sleeve\n2 | ground'],
  ])('reads with %s', (_, text) => {
    const table = readPinTable(text);
    expect(table.problems).toEqual([]);
    expect(table.pins).toEqual([
      { pin: '1', name: '+9 V', net: 'supply', row: 1, position: 1 },
      { pin: '2', name: 'ground', net: 'ground', row: 1, position: 2 },
    ]);
  });

  test('spaces alone separate short lines', () => {
    expect(
      readPinTable('1 VBUS\n2 D-\n3 D+').pins.map((pin) => `${pin.pin}/${pin.net}/${pin.position}`),
    ).toEqual(['1/VBUS/1', '2/D-/2', '3/D+/3']);
  });

  test('rows that face each other, neighbours that rows do not show, unused pins', () => {
    const table = readPinTable('facing\nA1,GND,,1\nB1,GND,,2\nA2,TX,,1\nB2,,,2,2,unused\nnear A1 B2');
    expect(table.problems).toEqual([]);
    const sheet = connectorSheet({ key: 'k', name: 'n', note: '', ...table });
    expect(sheet.mustBeOpen.map(({ a, b }) => `${a.pin}:${b.pin}`)).toEqual([
      'A1:A2',
      'A1:B2',
      'B1:B2',
      'A2:B2',
    ]);
    expect(sheet.mayBeJoined.map(({ a, b }) => `${a.pin}:${b.pin}`)).toEqual(['A1:B1']);
    expect(sheet.continuity.map((pin) => pin.pin)).toEqual(['A1', 'B1', 'A2']);
  });

  test('every shipped table can be written and read back', () => {
    for (const shipped of PIN_TABLES) {
      const text = [
        ...(shipped.isFacing ? ['facing'] : []),
        ...shipped.pins.map((pin) =>
          [pin.pin, pin.name, pin.net, pin.row, pin.position, pin.isUnused ? 'unused' : ''].join(';'),
        ),
        ...(shipped.alsoNear ?? []).map((pair) => `near ${pair.join(' ')}`),
      ].join('\n');
      const read = ownPinTable({ id: shipped.key, name: shipped.name, source: shipped.note, text });
      expect(read && connectorSheet(read)).toMatchObject({
        mustBeOpen: connectorSheet(shipped).mustBeOpen,
        mayBeJoined: connectorSheet(shipped).mayBeJoined,
        continuity: connectorSheet(shipped).continuity,
      });
    }
  });
});

describe('every problem is told by its line', () => {
  test.each([
    ['a pin twice', '1,a\n2,b\n1,c', ['3: Pin 1 stands there twice.']],
    [
      'two pins on one place',
      '1,a,,1,1\n2,b,,1,1',
      ['2: Row 1, position 1 is taken by another pin already.'],
    ],
    ['no row', '1,a,,x\n2,b', ['1: “x” is no row: use a whole number from 1 to 99.']],
    ['half a position', '1,a,,1,1.5\n2,b', ['1: “1.5” is no position: use a whole number from 1 to 99.']],
    ['no pin', '1,a\n?!,b\n3,c', ['2: “?!” is no pin: use up to eight letters and digits, like A4 or 17.']],
    [
      'too much',
      '1,a,b,1,1,c,d\n2,e',
      ['1: There is more on this line than pin, name, net, row and position.'],
    ],
    ['a stranger near', '1,a\n2,b\nnear 1 9', ['3: There is no pin 9.']],
    ['near alone', '1,a\n2,b\nnear 1', ['3: Write “near” and the two pins, like: near 1 3.']],
    ['one pin', '1,a', ['1: Give at least two pins, one a line.']],
    ['nothing', '', ['1: Give at least two pins, one a line.']],
  ])('%s', (_, text, expected) => {
    expect(problems(text)).toEqual(expected);
    expect(ownPinTable({ id: 'x', name: 'x', source: '', text })).toBeNull();
  });

  test('more pins than a connector has', () => {
    const text = Array.from({ length: 101 }, (_, i) => `P${i},n${i},,${(i % 3) + 1}`).join('\n');
    expect(problems(text)).toEqual(['101: A table holds at most 100 pins.']);
  });
});
