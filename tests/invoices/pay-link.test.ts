import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { payLink, payLinkProblem } from '@/lib/invoices/rules/pay-link';
import { waysToPay } from '@/lib/invoices/rules/ways-to-pay';

const TEMPLATE = 'https://pay.example.org/q/{reference}?sum={amount}&in={currency}';

describe('a pay link', () => {
  it('has amount, currency and reference filled in, in the currency’s own decimals', () => {
    const fill = (amount: number, currency: string) =>
      payLink(TEMPLATE, { amount, currency, reference: '2026-00001' });
    expect(fill(7200, 'GBP')).toBe('https://pay.example.org/q/2026-00001?sum=72.00&in=GBP');
    expect(fill(7200, 'JPY')).toBe('https://pay.example.org/q/2026-00001?sum=7200&in=JPY');
    expect(fill(7200, 'KWD')).toBe('https://pay.example.org/q/2026-00001?sum=7.200&in=KWD');
    expect(fill(0, 'GBP')).toBeNull();
    expect(fill(-1, 'GBP')).toBeNull();
    expect(payLink('', { amount: 1, currency: 'GBP', reference: 'x' })).toBeNull();
  });

  it('stays on its own site and its own parts whatever is filled in', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary' }),
        fc.integer({ min: 1, max: 1_000_000 }),
        (reference, amount) => {
          fc.pre(reference.isWellFormed());
          const link = payLink(TEMPLATE, { amount, currency: 'EUR', reference });
          const url = new URL(link ?? '');
          expect(url.host).toBe('pay.example.org');
          expect([...url.searchParams.keys()]).toEqual(['sum', 'in']);
          expect(url.hash).toBe('');
        },
      ),
    );
  });

  it.each([
    [TEMPLATE, null],
    ['https://pay.example.org/', null],
    ['http://pay.example.org/{amount}', 'not-https'],
    ['javascript:alert(1)//{amount}', 'not-https'],
    ['https://pay.example.org/{total}', 'unknown-place'],
    ['https://{reference}.example.org/', 'place-in-host'],
    ['https://pay.example.org{amount}/', 'place-in-host'],
    ['https://you@pay.example.org/', 'has-login'],
    ['https://pay.example.org/a b', 'not-an-address'],
    ['https://', 'not-an-address'],
    ['https://pay.example.org/{amount', 'not-an-address'],
  ])('%s: %s', (template, problem) => {
    expect(payLinkProblem(template)).toBe(problem);
  });
});

describe('ways to pay', () => {
  const settings = {
    name: 'Quay & Alder',
    bankHolder: '',
    iban: 'DE71110220330123456789',
    bic: '',
    payLink: TEMPLATE,
    paymentText: ' ',
  };

  it('give a transfer code for euro alone', () => {
    const euro = waysToPay(settings, { amount: 7200, currency: 'EUR', reference: '2026-00001' });
    expect(euro?.bank?.qr).toContain('\nEUR72.00\n');
    expect(euro?.bank?.creditorReference).toMatch(/^RF\d\d202600001$/);
    // The reference with check digits goes as the structured one, the last element that is given (EPC069-12).
    expect(euro?.bank?.qr?.split('\n').at(-1)).toBe(euro?.bank?.creditorReference);
    const pounds = waysToPay(settings, { amount: 7200, currency: 'GBP', reference: '2026-00001' });
    expect(pounds?.bank).toMatchObject({ qr: null, creditorReference: null, holder: 'Quay & Alder' });
  });

  it('are none when nothing is to pay', () => {
    expect(waysToPay(settings, { amount: 0, currency: 'EUR', reference: 'x' })).toBeNull();
  });
});
