import { describe, expect, test } from 'vitest';
import { drawBagLabel } from '@/lib/documents/bag-label';
import { drawQuote } from '@/lib/documents/quote';
import { drawReceipt } from '@/lib/documents/receipt';
import { label, labelSetting, quote, receipt } from '@/tests/documents/demo';
import { everyDocument } from '@/tests/documents/every-document';
import { faultsOf, plain, readPages } from '@/tests/documents/read-pdf';

describe.each(everyDocument)('$name', ({ draw, margin }) => {
  test('the same facts give the same bytes, one after the other and at once', async () => {
    const first = await draw();
    const others = await Promise.all([draw(), draw(), draw()]);
    for (const other of others) expect(Buffer.compare(first, other)).toBe(0);
  });

  test('no text leaves its page, stands over other text, or is left out of the tags', async () => {
    const bytes = await draw();
    expect(readPages(bytes).flatMap((page) => page.texts).length).toBeGreaterThan(2);
    expect(faultsOf(bytes, margin)).toEqual([]);
  });

  test('the file is PDF 1.7, tagged, in a language, with its title shown', async () => {
    const file = plain(await draw());
    expect(file.startsWith('%PDF-1.7')).toBe(true);
    expect(file).toMatch(/\/Marked true/);
    expect(file).toMatch(/\/Lang \(en-GB\)/);
    expect(file).toMatch(/\/DisplayDocTitle true/);
    expect(file).toMatch(/\/Tabs \/S/);
    expect(file).toMatch(/\(D:20261203101500Z\)/);
    // Nothing here may claim a conformance that no checker has confirmed.
    expect(file).not.toMatch(/pdfaid|pdfuaid|GTS_PDF/);
  });

  test('every element of the tree has a parent, every figure says what it shows and where it stands', async () => {
    const elements = plain(await draw()).match(/\d+ 0 obj\n<<\n\/S \/(?!URI)[\s\S]*?endobj/g) ?? [];
    expect(elements.length).toBeGreaterThan(4);
    for (const element of elements) expect(element).toMatch(/\/P \d+ 0 R/);
    const figures = elements.filter((element) => element.includes('/S /Figure'));
    expect(figures.length).toBeGreaterThan(0);
    for (const figure of figures) {
      expect(figure).toMatch(/\/Alt \((QR code|Code 128 bar code)[^)]+\)/);
      expect(figure).toMatch(/\/BBox \[/);
    }
    for (const head of elements.filter((element) => element.includes('/S /TH')))
      expect(head).toMatch(/\/Scope \/(Row|Column)/);
  });

  test('one first heading a docket, and no font but the embedded ones', async () => {
    const file = plain(await draw());
    expect(file).toMatch(/\/S \/H1/);
    const fonts = [...file.matchAll(/\/BaseFont \/(\S+)/g)].map((found) => found[1] ?? '');
    expect(fonts.length).toBeGreaterThan(0);
    for (const font of fonts)
      expect(font).toMatch(/^[A-Z]{6}\+(AtkinsonHyperlegible(Next|Mono)|NotoSans)-(Regular|Bold)$/);
    expect(file.match(/\/FontFile2 \d+ 0 R/g)).toHaveLength(new Set(fonts).size);
  });
});

test('a paper is marked as English, however its workshop writes amounts', async () => {
  const german = { ...receipt, setting: { ...receipt.setting, locale: 'de-DE' } };
  expect(plain(await drawReceipt(german))).toMatch(/\/Lang \(en-GB\)/);
  const bag = await drawBagLabel(label, { ...labelSetting, locale: 'de-DE' });
  expect(plain(bag)).toMatch(/\/Lang \(en-GB\)/);
  const irish = await drawReceipt({ ...receipt, setting: { ...receipt.setting, locale: 'en-IE' } });
  expect(plain(irish)).toMatch(/\/Lang \(en-IE\)/);
});

test('a link says in words where it leads', async () => {
  const file = plain(await drawQuote(quote));
  expect(file).toMatch(
    /\/Subtype \/Link[\s\S]{0,200}\/Contents \(Answer quote Q-9ZQV-600A online\)|\/Contents \(Answer quote Q-9ZQV-600A online\)[\s\S]{0,200}\/Subtype \/Link/,
  );
});

test('another moment of making gives another file', async () => {
  const later = { ...receipt, setting: { ...receipt.setting, made: new Date('2026-12-04T10:15:00Z') } };
  expect(Buffer.compare(await drawReceipt(receipt), await drawReceipt(later))).not.toBe(0);
});
