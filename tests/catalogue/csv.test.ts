import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCsv, writeCsv } from '@/lib/catalogue/csv';
import { type Cells, emptyCells, listLayout } from '@/lib/catalogue/rules/list-columns';

const settings = { currency: 'GBP', pricesIncludeTax: true };
const layout = listLayout(settings);
const heads = layout.map(({ head }) => head);
const row = (cells: Partial<Cells>): Cells => ({ ...emptyCells(), family: 'Field recorders', ...cells });

describe('the file', () => {
  // RFC 4180, section 2: CRLF between lines (2.1), a cell with a comma, quote or line break in quotes (2.6), a quote doubled (2.7).
  test('is CSV as RFC 4180 has it, after a byte order mark', () => {
    const text = writeCsv([row({ repair: 'Socket, "USB"', summary: 'One\ntwo' })], layout);
    expect(text.startsWith(`\ufeff${heads.join(',')}\r\nField`.slice(0, 20))).toBe(true);
    expect(text).toContain(',"Socket, ""USB""","One\ntwo",');
    expect(text.endsWith('\r\n')).toBe(true);
  });

  test('holds no cell that a spreadsheet would run', () => {
    const text = writeCsv([row({ family: '=1+1', maker: '@SUM(A1)', model: '-2' })], layout);
    expect(text.split('\r\n')[1]).toMatch(/^,'=1\+1,,,'@SUM\(A1\),'-2,/);
  });

  test('says in its headings whether tax is in the price', () => {
    expect(heads).toContain('Price with tax');
    const other = listLayout({ ...settings, pricesIncludeTax: false });
    const { rows, problems } = readCsv(writeCsv([row({})], layout), other);
    expect(rows).toEqual([]);
    expect(problems.map((problem) => problem.message)).toEqual([
      'There is no column “Price with tax”',
      'The column “Price without tax” is missing',
    ]);
  });

  test('comes back cell by cell, whatever is in them', () => {
    const first = fc.constantFrom('', '=', '+', '-', '@', "'", "'=", '"', ',', ';', 'é');
    const cell = fc
      .tuple(first, fc.string({ unit: 'grapheme' }))
      .map(([start, rest]) => `${start}${rest}`.replaceAll('\r\n', '\n').trim());
    const texts = layout.flatMap(({ key, kind }) => (kind === 'text' ? [key] : []));
    const cells = fc
      .array(cell, { minLength: texts.length, maxLength: texts.length })
      .map((values) => row(Object.fromEntries(texts.map((key, i) => [key, values[i] ?? '']))))
      .filter((each) => Object.values(each).some((text) => text !== ''));
    fc.assert(
      fc.property(fc.array(cells, { maxLength: 4 }), (all) => {
        const { rows, problems } = readCsv(writeCsv(all, layout), layout);
        expect(problems).toEqual([]);
        expect(rows).toEqual(all.map((each, i) => ({ row: i + 2, cells: each })));
      }),
    );
  });
});

describe('reading', () => {
  const line = ['', 'Field recorders', '1', ...heads.slice(3).map(() => '')];

  test.each([
    ['commas', `${heads.join(',')}\n${line.join(',')}`],
    ['semicolons', `${heads.join(';')}\n${line.join(';')}`],
    ['a byte order mark', `\ufeff${heads.join(';')}\r\n${line.join(';')}\r\n`],
    ['quotes around everything', [heads, line].map((each) => `"${each.join('","')}"`).join('\n')],
    ['headings in capitals', `${heads.join(',').toUpperCase()}\n${line.join(',')}`],
    ['empty lines behind', `${heads.join(',')}\n${line.join(',')}\n\n,,,\n`],
    ['empty cells left out behind', `${heads.join(',')}\n,Field recorders,1`],
  ])('takes %s', (_, text) => {
    const { rows, problems } = readCsv(text, layout);
    expect(problems).toEqual([]);
    expect(rows).toMatchObject([{ row: 2, cells: { family: 'Field recorders', familyPlace: '1' } }]);
  });

  test('takes columns in any order', () => {
    const { rows } = readCsv(`${[...heads].reverse().join(',')}\n${[...line].reverse().join(',')}`, layout);
    expect(rows).toMatchObject([{ cells: { family: 'Field recorders', familyPlace: '1' } }]);
  });

  test('counts rows as a spreadsheet does, over empty lines and breaks inside cells', () => {
    const long = ['', '"Field\nrecorders"', ...heads.slice(2).map(() => '')];
    const text = [heads, [''], long, line].map((each) => each.join(',')).join('\r\n');
    expect(readCsv(text, layout).rows.map((each) => each.row)).toEqual([3, 4]);
  });

  test.each([
    ['no heading at all', '', heads.length],
    ['a heading left out', heads.slice(1).join(','), 1],
    ['a heading nobody knows', [...heads, 'Colour'].join(','), 1],
    ['a heading twice', [...heads, 'Maker'].join(','), 1],
    ['a text behind the last column', `${heads.join(',')}\n${[...line, 'x'].join(',')}`, 1],
    ['a quotation mark that never closes', `${heads.join(',')}\n"Field`, 1],
    ['a letter behind a closed quotation mark', `${heads.join(',')}\n"Field"x,`, 1],
  ])('tells %s', (_, text, faults) => {
    expect(readCsv(text, layout).problems).toHaveLength(faults);
  });

  test('names the row of a quotation mark that does not match', () => {
    const text = `${heads.join(',')}\n${line.join(',')}\n"Field"x,`;
    expect(readCsv(text, layout).problems).toMatchObject([{ row: 3, column: null }]);
  });
});
