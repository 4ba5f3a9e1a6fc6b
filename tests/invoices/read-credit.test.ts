import { describe, expect, test } from 'vitest';
import { readCredit } from '@/app/workshop/(inside)/money/invoices/[number]/read-credit';
import { Refusal } from '@/lib/outcome';

const invoice = { currency: 'GBP', lines: [{ position: 0 }, { position: 2 }] };

function typed(fields: Record<string, string>): FormData {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  return form;
}

describe('what a credit note takes off', () => {
  test('is everything where no amount is filled in', () => {
    expect(readCredit('everything', invoice, typed({ 'line-0': '', 'line-2': ' ' }))).toBe('everything');
  });

  test('is the amounts of lines that are filled in', () => {
    const form = typed({ 'line-0': '', 'line-2': '10.50', 'line-7': '99.00' });
    expect(readCredit('lines', invoice, form)).toEqual(new Map([[2, 1050]]));
  });

  test.each([
    {
      name: 'everything beside an amount',
      choice: 'everything',
      fields: { 'line-2': '10.50' },
      field: 'choice',
    },
    {
      name: 'everything beside what is no amount',
      choice: 'everything',
      fields: { 'line-0': 'half' },
      field: 'choice',
    },
    { name: 'what is no amount', choice: 'lines', fields: { 'line-0': 'half' }, field: 'line-0' },
  ] as const)('$name is refused at its field', ({ choice, fields, field }) => {
    const read = () => readCredit(choice, invoice, typed(fields));
    expect(read).toThrow(Refusal);
    expect(read).toThrow(expect.objectContaining({ code: 'invalid', field }));
  });
});
