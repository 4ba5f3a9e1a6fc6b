import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { FormFields } from '@/app/(front)/quote/[token]/form/form-fields';
import { day } from '@/lib/calendar/day';
import { drawRepairForm } from '@/lib/documents/repair-form';
import { isHeld, LEAST_VALID_DAYS, mayReplace } from '@/lib/quotes/rules/held-price';
import {
  lastHeldDay,
  REPAIR_FORM_FIELDS,
  type RepairFormFacts,
  type RepairFormKey,
  repairForm,
} from '@/lib/quotes/rules/repair-form';
import { setting, workshop } from '@/tests/documents/demo';
import { lettersOf } from '@/tests/documents/read-pdf';
import { isInstalled, runOn } from '@/tests/documents/tools';

// Directive (EU) 2024/1799, Article 4 and Annex I. Read in a copy: the list opens with the identity of the repairer and
// the good; free of charge, on a durable medium, before the consumer is bound, conditions unchanged for 30 calendar
// days, diagnostic costs only when told before. From memory: the rest of the fields, their order and their wording.

const facts: RepairFormFacts = {
  locale: 'en-GB',
  repairer: {
    name: workshop.name,
    address: workshop.address,
    phone: workshop.phone ?? '',
    email: workshop.email ?? '',
    online: 'https://quay-alder.example.org/quote/7tR2mKcVx9LhYpWb',
  },
  good: { device: 'Tidewater HW-2 field recorder', serial: 'TW2-0O51-18B' },
  defect: 'The USB socket is torn off on one side and four pads came away with it.',
  proposal: 'Rebuild four pads and fit a new socket.',
  price: { gross: 13060, currency: 'GBP', taxName: 'VAT', isInspectionOnly: false },
  workingDays: 8,
  replacementText: '',
  ancillary: [{ description: 'Postage back, tracked', gross: 780 }],
  inspectionFee: { amount: 1800, isTakenOff: true },
  providedOn: day('2026-12-01'),
  validUntil: day('2026-12-31'),
  note: 'Recordings on the internal memory stay where they are.',
};

/** What each field has to say for this quote, by field in the order of the Annex. */
const SAID: Record<RepairFormKey, { source: string; texts: string[] }> = {
  repairer: {
    source: 'Annex I, first item, read in a copy; its parts from memory',
    texts: [
      'Identity: Quay & Alder',
      'Address: 4 Ropewalk Yard, Sandmouth, QM4 7QY',
      'Telephone: 01632 960417',
      'E-mail: bench@quay-alder.example.org',
      'Other means of online communication: https://quay-alder.example.org/quote/7tR2mKcVx9LhYpWb',
    ],
  },
  good: {
    source: 'Annex I, second item, read in a copy',
    texts: ['Device: Tidewater HW-2 field recorder', 'Serial number: TW2-0O51-18B'],
  },
  defect: { source: 'from memory', texts: ['The USB socket is torn off on one side'] },
  repair: { source: 'from memory', texts: ['Rebuild four pads and fit a new socket.'] },
  price: {
    source: 'from memory',
    texts: [
      '£130.60 with VAT (GBP).',
      'It is also the maximum price: we charge more only when you have agreed',
    ],
  },
  time: { source: 'from memory', texts: ['8 working days from the day the unit arrives at the workshop.'] },
  replacement: { source: 'from memory', texts: ['None. No cost.'] },
  handover: {
    source: 'from memory',
    texts: ['By post to Quay & Alder, 4 Ropewalk Yard, Sandmouth, QM4 7QY.'],
  },
  ancillary: { source: 'from memory', texts: ['Postage back, tracked: £7.80, which is in the price'] },
  validity: {
    source: 'the period read in a copy, the field from memory',
    texts: ['Until Thursday 31 December 2026: 30 calendar days from Tuesday 1 December 2026.'],
  },
  additional: {
    source: 'from memory',
    texts: [
      'Recordings on the internal memory stay where they are.',
      'This form costs nothing.',
      'Finding a fault that is not named here costs £18.00, and only when you have said yes to it before. It is taken off the price when the repair goes ahead.',
    ],
  },
};

function formOf(changes: Partial<RepairFormFacts> = {}) {
  return repairForm({ ...facts, ...changes });
}

function textOfField(key: RepairFormKey, changes: Partial<RepairFormFacts> = {}): string {
  const entries = formOf(changes).find((field) => field.key === key)?.entries ?? [];
  return entries.map(({ name, text }) => (name === null ? text : `${name}: ${text}`)).join(' ');
}

describe('the fields of the European Repair Information Form', () => {
  const onPage = renderToStaticMarkup(createElement(FormFields, { fields: formOf() }))
    .replace(/<[^>]+>/g, '')
    .replaceAll('&amp;', '&');

  test('are eleven, in the order of the Annex', () => {
    expect(formOf().map(({ key, place }) => `${place} ${key}`)).toEqual([
      '1 repairer',
      '2 good',
      '3 defect',
      '4 repair',
      '5 price',
      '6 time',
      '7 replacement',
      '8 handover',
      '9 ancillary',
      '10 validity',
      '11 additional',
    ]);
    const places = formOf().map(({ place, heading }) => onPage.indexOf(`${place}. ${heading}`));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test.each(REPAIR_FORM_FIELDS.map((key) => ({ key, ...SAID[key] })))(
    '$key stands on the page ($source)',
    ({ key, texts }) => {
      const heading = formOf().find((field) => field.key === key)?.heading ?? 'no such field';
      expect(onPage).toContain(heading);
      for (const text of texts) expect(onPage).toContain(text);
    },
  );

  test('all stand in the file as pdftotext reads it', async ({ skip }) => {
    skip(!isInstalled('pdftotext'), 'pdftotext is not on this machine');
    const bytes = await drawRepairForm({
      setting,
      workshop,
      number: 'Q9ZQV600A',
      revision: 1,
      customer: 'Mira Oakenfold',
      unit: { model: facts.good.device, serial: facts.good.serial },
      providedOn: facts.providedOn,
      validUntil: facts.validUntil,
      answerUrl: facts.repairer.online,
      fields: formOf(),
    });
    // In the order of the file's content, where a heading stands before what it heads, without what parts two lines.
    const file = lettersOf(runOn(bytes, 'pdftotext', (name) => ['-raw', name, '-']));
    let from = 0;
    for (const { key, place, heading } of formOf()) {
      const at = file.indexOf(lettersOf(`${place}. ${heading}`), from);
      expect(at, `${place}. ${heading}`).toBeGreaterThanOrEqual(from);
      for (const text of SAID[key].texts) expect(file.slice(at)).toContain(lettersOf(text));
      from = at;
    }
    expect(file).toContain(lettersOf('Conditions held until Thursday 31 December 2026'));
  });
});

describe('what the form promises', () => {
  test('its conditions hold for 30 calendar days: provided 1 December 2026, the last is the 31st', () => {
    expect(LEAST_VALID_DAYS).toBe(30);
    expect(lastHeldDay(day('2026-12-01'))).toBe('2026-12-31');
    expect(isHeld(day('2026-12-31'), day('2026-12-31'))).toBe(true);
    expect(isHeld(day('2026-12-31'), day('2027-01-01'))).toBe(false);
    // Over the end of a year and of a leap year's February.
    expect(lastHeldDay(day('2026-12-15'))).toBe('2027-01-14');
    expect(lastHeldDay(day('2028-01-31'))).toBe('2028-03-01');
  });

  test('and a higher price takes its place within them only when the customer asked for it', () => {
    const held = { gross: 13060, validUntil: day('2026-12-31') };
    const onDay30 = { today: day('2026-12-31'), customerAsked: false };
    expect(mayReplace(held, { ...onDay30, gross: 13061 })).toBe(false);
    expect(mayReplace(held, { ...onDay30, gross: 13061, customerAsked: true })).toBe(true);
    expect(mayReplace(held, { ...onDay30, gross: 13060 })).toBe(true);
    expect(mayReplace(held, { ...onDay30, gross: 13061, today: day('2027-01-01') })).toBe(true);
  });

  test('a quote that ends sooner is no form', () => {
    expect(() => formOf({ validUntil: day('2026-12-30') })).toThrow(RangeError);
    expect(textOfField('validity', { validUntil: day('2027-01-30') })).toContain(
      'Until Saturday 30 January 2027: 60 calendar days',
    );
  });

  test('a price that cannot be worked out yet gives its method and a maximum', () => {
    const text = textOfField('price', {
      price: { gross: 1800, currency: 'GBP', taxName: 'VAT', isInspectionOnly: true },
    });
    expect(text).toContain(
      'Method of calculation: The price cannot be worked out before the unit is inspected',
    );
    expect(text).toContain(
      'Maximum price: £18.00 with VAT (GBP), unless you have agreed to the price offered then',
    );
  });

  test('what a unit to use meanwhile costs is said in the workshop’s words', () => {
    expect(textOfField('replacement', { replacementText: 'A loan recorder for £4.00 a day.' })).toBe(
      'A loan recorder for £4.00 a day.',
    );
  });

  test('no field is left empty', () => {
    const bare = formOf({
      repairer: { name: 'Quay & Alder', address: [], phone: '', email: '', online: '' },
      good: { device: '', serial: '' },
      defect: '',
      proposal: '',
      workingDays: null,
      ancillary: [],
      inspectionFee: { amount: 0, isTakenOff: true },
      note: '',
    });
    for (const { entries, key } of bare) {
      expect(entries.length, key).toBeGreaterThan(0);
      for (const { text } of entries) expect(text, key).not.toBe('');
    }
    expect(textOfField('ancillary', { ancillary: [] })).toBe('None.');
    expect(textOfField('additional', { note: '', inspectionFee: { amount: 0, isTakenOff: true } })).toBe(
      'This form costs nothing.',
    );
  });

  test('amounts are written by the currency, and tax is named only where there is one', () => {
    expect(
      textOfField('price', {
        price: { gross: 12345, currency: 'KWD', taxName: null, isInspectionOnly: false },
      }).replace(/\s/g, ' '),
    ).toContain('KWD 12.345 (KWD).');
  });
});
