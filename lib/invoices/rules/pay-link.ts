import { decimalText } from '@/lib/money/amount';

const PLACES = ['amount', 'currency', 'reference'] as const;

export type PayLinkProblem = 'not-https' | 'not-an-address' | 'unknown-place' | 'place-in-host' | 'has-login';

/**
 * What is wrong with the address of a payment page, or null. It is a whole https address, into which {amount}, {currency} and
 * {reference} are filled after its host; no other word in braces, no name or password before the host.
 *
 * payLinkProblem('https://pay.example.org/r?a={amount}&r={reference}') -> null
 */
export function payLinkProblem(template: string): PayLinkProblem | null {
  if (!/^https:\/\//i.test(template)) return 'not-https';
  const names = [...template.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1] ?? '');
  if (names.some((name) => !PLACES.some((place) => place === name))) return 'unknown-place';
  const host = template.slice('https://'.length).split(/[/?#]/)[0] ?? '';
  if (host.includes('{')) return 'place-in-host';
  if (host.includes('@')) return 'has-login';
  const filled = template.replace(/\{[a-z]+\}/g, '1');
  if (/[{}\s\\]/.test(filled) || !URL.canParse(filled)) return 'not-an-address';
  return null;
}

/** What to say at the field for each problem. */
export const PAY_LINK_SENTENCES: Record<PayLinkProblem, string> = {
  'not-https': 'The address must begin with https://',
  'not-an-address': 'This is no web address. Copy it whole, without spaces',
  'unknown-place': 'Only {amount}, {currency} and {reference} can be filled in',
  'place-in-host': 'Put {amount}, {currency} and {reference} after the name of the site',
  'has-login': 'Leave out the name and password before the site',
};

/**
 * The address where one amount is paid; null where the workshop has none or nothing is to pay. What is filled in is encoded, so
 * that it can never become another part of the address.
 *
 * payLink('https://pay.example.org/{reference}?a={amount}', { amount: 7200, currency: 'GBP', reference: '2026-00001' })
 *   -> 'https://pay.example.org/2026-00001?a=72.00'
 */
export function payLink(
  template: string,
  o: { amount: number; currency: string; reference: string },
): string | null {
  if (template === '' || o.amount <= 0 || payLinkProblem(template) !== null) return null;
  const values = { amount: decimalText(o.amount, o.currency), currency: o.currency, reference: o.reference };
  return template.replace(/\{(amount|currency|reference)\}/g, (_, place: keyof typeof values) =>
    encodeURIComponent(values[place]),
  );
}
