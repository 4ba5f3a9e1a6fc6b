import { expect, test } from 'vitest';
import { flowText } from '@/lib/documents/kit/flow';
import { fullColumn } from '@/lib/documents/kit/section';
import { Sheet } from '@/lib/documents/kit/sheet';
import { plain, textOf } from '@/tests/documents/read-pdf';

const open = (isTrial = false) =>
  new Sheet({
    size: 'A4',
    title: 'Proof',
    author: 'Quay & Alder',
    lang: 'en-GB',
    made: new Date('2026-12-03T10:15:00Z'),
    isTrial,
  });

test('a drawing that fails leaves no open element behind, so that the file still ends', async () => {
  const sheet = open();
  expect(() =>
    sheet.element(sheet.root, 'Sect', (part) => {
      sheet.element(part, 'P', () => {
        throw new Error('the pen broke');
      });
    }),
  ).toThrow('the pen broke');
  flowText(sheet, sheet.root, 'P', 'Still here', fullColumn(sheet));
  const file = await sheet.finish();
  expect(textOf(file)).toContain('Still here');
  expect(plain(file).endsWith('%%EOF\n')).toBe(true);
});

test('content is never marked inside other content, nor over a page', () => {
  const sheet = open();
  expect(() => sheet.artifact(() => sheet.artifact(() => {}))).toThrow('marked content');
  const other = open();
  expect(() => other.artifact(() => other.newPage())).toThrow('page cannot be turned');
});

test('an element in pieces over two pages stays one element', async () => {
  const sheet = open();
  flowText(sheet, sheet.root, 'P', 'A long sentence that goes on and on. '.repeat(400), fullColumn(sheet));
  expect(sheet.pages).toBeGreaterThan(1);
  const file = plain(await sheet.finish());
  expect(file.match(/\/S \/P\n/g)).toHaveLength(1);
  expect(file).toMatch(/\/Type \/MCR/);
});

test('a trial ends where the drawing ends, over as many pages, and draws nothing', () => {
  const text = 'A long sentence that goes on and on. '.repeat(400);
  const [trial, drawn] = [true, false].map((isTrial) => {
    const sheet = open(isTrial);
    flowText(sheet, sheet.root, 'P', text, fullColumn(sheet));
    return sheet;
  });
  expect([trial?.pages, trial?.y]).toEqual([drawn?.pages, drawn?.y]);
  expect(() => trial?.doc).toThrow('no paper');
  expect(() => trial?.artifact(() => trial.newPage())).not.toThrow();
});
