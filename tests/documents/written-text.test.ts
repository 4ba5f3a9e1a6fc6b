import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawBagLabel, drawBagLabelSheet, labelsPerSheet } from '@/lib/documents/bag-label';
import { drawCertificate } from '@/lib/documents/certificate';
import { runsOf, tidy, uncoveredCharacters } from '@/lib/documents/kit/runs';
import { drawPackingSlip } from '@/lib/documents/packing-slip';
import { drawQuote } from '@/lib/documents/quote';
import { drawReceipt } from '@/lib/documents/receipt';
import {
  certificate,
  certificateOf,
  label,
  labelSetting,
  quote,
  receipt,
  slip,
} from '@/tests/documents/demo';
import { faultsOf, lettersOf, plain, readPages, textOf } from '@/tests/documents/read-pdf';

const long = 'Uferwerkstatt für Klangmaschinen, Söhne & Enkel am alten Seilerhof '.repeat(5).slice(0, 300);
const unbroken = 'WAVA0O1I'.repeat(38).slice(0, 300);

describe('letters of many scripts', () => {
  test.each([
    ['accented Latin', 'Zoë Žofie Łukasz Őrs Åse Ñandú Şule İpek Ğ ß'],
    ['letters with a mark of their own', 'Nguye\u0302\u0303n Thi\u0323 A\u030a'],
    ['Greek', 'Ζωή Παπαδοπούλου, Οδός Αθηνάς 7'],
    ['Cyrillic', 'Олексій Шевченко, Київ; Ђорђе Љубић'],
    ['signs of the trade', '≤ 0.25 Ω ± 5 %, 20 µF, 12 × 3 mm, € £ ₴ ₺ „“”’ – …'],
  ])('%s comes through whole', async (_, name) => {
    const file = await drawQuote({ ...quote, customer: name });
    expect(lettersOf(textOf(file))).toContain(lettersOf(name));
    expect(uncoveredCharacters(name)).toEqual([]);
  });

  test('a Greek name is set in one font, not in two by turns', () => {
    expect(runsOf('Παπαδοπούλου', 'text')).toEqual([{ text: 'Παπαδοπούλου', font: 'noto-regular' }]);
  });

  test('a character no font holds is shown as missing and kept as text', async () => {
    const file = await drawQuote({ ...quote, customer: 'Zoë 山田' });
    expect(textOf(file)).toContain('Zoë ��');
    expect(uncoveredCharacters('Zoë 山田 山')).toEqual(['山', '田']);
    expect(runsOf('山', 'text')).toEqual([{ text: '\ufffd', font: 'noto-regular', actual: '山' }]);
  });

  test('marks that turn the writing round do not reach the paper', () => {
    expect(tidy('W\u202eA\u200bB\u0007\tC\r\nD')).toBe('WAB  C\nD');
  });
});

describe('text that is too long', () => {
  const unit = { model: long, serial: unbroken };
  const workshop = { ...slip.workshop, name: long, address: [long, unbroken.slice(0, 90), 'Sandmouth'] };

  test('a slip with names of 300 characters stands clear on its pages and loses no letter', async () => {
    const file = await drawPackingSlip({ ...slip, workshop, unit, from: [long, unbroken] });
    expect(faultsOf(file, 38)).toEqual([]);
    const letters = lettersOf(textOf(file));
    expect(letters).toContain(lettersOf(long));
    expect(letters).toContain(unbroken);
  });

  test('a slip with many accessories goes on over further pages', async () => {
    const include = Array.from({ length: 60 }, (_, index) => `Accessory ${index}, ${long.slice(0, 70)}`);
    const file = await drawPackingSlip({ ...slip, include });
    expect(readPages(file).length).toBeGreaterThan(1);
    expect(faultsOf(file, 38)).toEqual([]);
    const letters = lettersOf(textOf(file));
    for (const item of include) expect(letters).toContain(lettersOf(item));
  });

  test('a certificate of 20 cover lines and 80 readings keeps every one', async () => {
    const lines = Array.from({ length: 20 }, (_, index) => ({
      id: `line-${index}`,
      kind: 'work' as const,
      description: index % 6 === 0 ? `${index} ${long}` : `Line number ${index}`,
      symptoms: [],
      term: 'P12M',
      startsOn: certificate.issuedOn,
      renewedUntil: null,
    }));
    const data = certificateOf(lines);
    const reading = data.proof.readings[0];
    if (!reading) throw new Error('the demo certificate has readings');
    const readings = Array.from({ length: 80 }, (_, index) => ({
      ...reading,
      name: `Reading ${index} of ${unbroken.slice(0, 40)}`,
    }));
    const work = [long.repeat(30)];
    const file = await drawCertificate({ ...data, workshop, unit, proof: { ...data.proof, readings, work } });
    expect(faultsOf(file, 38)).toEqual([]);
    const letters = lettersOf(textOf(file));
    for (const line of lines) expect(letters).toContain(lettersOf(line.description));
    for (const one of readings) expect(letters).toContain(lettersOf(one.name));
  });

  test('a row taller than a page goes on and stays one row', async () => {
    const [first] = quote.price.lines;
    if (!first) throw new Error('the demo quote has lines');
    const description = long.repeat(12);
    const file = await drawQuote({ ...quote, price: { ...quote.price, lines: [{ ...first, description }] } });
    expect(readPages(file).length).toBeGreaterThan(1);
    expect(faultsOf(file, 38)).toEqual([]);
    expect(plain(file).match(/\/S \/TR\n/g)).toHaveLength(
      plain(await drawQuote({ ...quote, price: { ...quote.price, lines: [first] } })).match(/\/S \/TR\n/g)
        ?.length ?? 0,
    );
  });

  test('a label shows what it has room for and keeps the whole text for a reader', async () => {
    const file = await drawBagLabel({ ...label, model: long, serial: unbroken }, labelSetting);
    expect(readPages(file)).toHaveLength(1);
    expect(faultsOf(file, 0)).toEqual([]);
    expect(textOf(file)).toContain('…');
    expect(textOf(file)).toContain('J-CE9S-AWRW');
  });
});

describe('what the documents say', () => {
  test('a slip names what goes in, what stays, how to pack, when and what it costs, on one page', async () => {
    const file = await drawPackingSlip(slip);
    expect(readPages(file)).toHaveLength(1);
    const letters = lettersOf(textOf(file));
    const told = [
      ...slip.include,
      ...slip.leaveOut,
      ...slip.pack,
      ...slip.outside,
      ...slip.battery.sentences,
    ];
    for (const text of [...told, slip.battery.caution ?? '', ...slip.from, ...slip.workshop.address])
      expect(letters).toContain(lettersOf(text));
    for (const step of slip.next)
      for (const text of [step.what, step.when, step.cost]) expect(letters).toContain(lettersOf(text));
    expect(textOf(file)).not.toContain('Free of charge');
  });

  test('a slip of a claim says that it is free of charge, and under which certificate', async () => {
    const file = await drawPackingSlip({ ...slip, certificate: 'W7YVSQJZ4' });
    expect(textOf(file)).toContain('Free of charge under certificate W-7YVS-QJZ4');
  });

  test('a list with nothing in it has no heading either', async () => {
    expect(textOf(await drawPackingSlip({ ...slip, outside: [] }))).not.toContain('On the box');
    expect(textOf(await drawQuote({ ...quote, ifNo: [] }))).not.toContain('If you say no');
  });

  test('a slip on Letter paper is one page too', async () => {
    const pages = readPages(
      await drawPackingSlip({ ...slip, setting: { ...slip.setting, paper: 'LETTER' } }),
    );
    expect(pages.map(({ width, height }) => [width, height])).toEqual([[612, 792]]);
  });

  test('a changed price says by how much, in both directions', async () => {
    expect(textOf(await drawQuote(quote))).toContain(
      'Revision 1 came to £71.80. This one comes to £130.60: £58.80 more.',
    );
    const less = await drawQuote({ ...quote, before: { revision: 1, gross: 14060 } });
    expect(textOf(less)).toContain('£10.00 less.');
    const first = textOf(await drawQuote({ ...quote, before: null, revision: 1 }));
    expect(first).not.toContain('Changed price');
  });

  test('a column of quantities is there only where a line has one', async () => {
    const { price } = quote;
    const bare = price.lines.map((line) => ({ ...line, quantity: '' }));
    expect(textOf(await drawQuote(quote))).toContain('Quantity');
    const text = textOf(await drawQuote({ ...quote, price: { ...price, lines: bare } }));
    expect(text).not.toContain('Quantity');
    expect(text).toContain('£130.60');
  });

  test('amounts without tax show their sum, the tax and the total', async () => {
    const totals = {
      net: 10000,
      tax: 2000,
      gross: 12000,
      breakdown: [{ category: 'S', rateBps: 2000, base: 10000, tax: 2000 }],
    } as const;
    const lines = [{ description: 'Labour', quantity: '2 h', amount: 10000 }];
    const price = {
      ...quote.price,
      mode: 'net' as const,
      lines,
      totals: { ...totals, breakdown: [...totals.breakdown] },
    };
    const text = textOf(await drawQuote({ ...quote, before: null, price }));
    expect(text).toContain('Without VAT');
    expect(text).toContain('Together £100.00');
    expect(text).toContain('VAT 20% £20.00');
    expect(text).toContain('To pay with VAT £120.00');
  });

  test('a workshop that charges no tax has no word of tax on its papers', async () => {
    const breakdown = [{ category: 'O' as const, rateBps: 0, base: 13060, tax: 0 }];
    const totals = { net: 13060, tax: 0, gross: 13060, breakdown };
    const text = textOf(
      await drawReceipt({ ...receipt, price: { ...receipt.price, totals, taxName: null, taxNumber: null } }),
    );
    expect(text).not.toMatch(/VAT|Tax/);
    expect(text).toContain('Total £130.60');
  });

  test('a receipt says what is still open, and what was paid too much', async () => {
    expect(textOf(await drawReceipt(receipt))).toContain('Paid in full: £130.60');
    const [payment] = receipt.payments;
    if (!payment) throw new Error('the demo receipt has a payment');
    const part = await drawReceipt({ ...receipt, payments: [{ ...payment, amount: 5000 }] });
    expect(textOf(part)).toContain('Still to pay: £80.60.');
    const over = await drawReceipt({ ...receipt, payments: [payment, { ...payment, amount: 1000 }] });
    expect(textOf(over)).toContain('Paid more than asked: £10.00.');
  });

  test('labels fill the places of a sheet, and the next sheet after it', async () => {
    const labels = Array.from({ length: labelsPerSheet }, () => label);
    expect(readPages(await drawBagLabelSheet(labels, labelSetting))).toHaveLength(1);
    const moved = readPages(await drawBagLabelSheet(labels, labelSetting, 1));
    expect(moved).toHaveLength(2);
    expect(moved[1]?.texts.filter(({ text }) => text === 'J-CE9S-AWRW')).toHaveLength(1);
    expect(() => drawBagLabelSheet([], labelSetting)).toThrow(RangeError);
    expect(() => drawBagLabelSheet([label], labelSetting, labelsPerSheet)).toThrow(RangeError);
  });
});

test('whatever is typed, a quote is finished, clear on its pages and in one tree', async () => {
  const typed = fc.oneof(
    fc.string({ maxLength: 90, unit: 'binary' }),
    fc.string({ maxLength: 400, unit: 'grapheme' }),
  );
  await fc.assert(
    fc.asyncProperty(typed, typed, fc.array(typed, { maxLength: 6 }), async (customer, model, found) => {
      const file = await drawQuote({
        ...quote,
        customer,
        unit: { model, serial: customer },
        found,
        ifYes: found,
      });
      expect(faultsOf(file, 38)).toEqual([]);
    }),
    { numRuns: 15 },
  );
}, 60_000);
