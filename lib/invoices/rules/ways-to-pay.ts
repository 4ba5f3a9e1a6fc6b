import { creditorReference, showIban } from './bank';
import { epcText } from './epc-qr';
import { payLink } from './pay-link';

/** What a workshop has told about how it is paid. */
export type PaySettings = {
  name: string;
  bankHolder: string;
  iban: string;
  bic: string;
  payLink: string;
  paymentText: string;
};

export type WaysToPay = {
  amount: number;
  /** what to give with the payment: the invoice's number, or the job's before there is one */
  reference: string;
  /** address of the payment page with the amount and reference in it */
  link: string | null;
  bank: {
    holder: string;
    /** in groups of four */
    iban: string;
    bic: string | null;
    /** the reference with check digits (ISO 11649), where the payment is in euro */
    creditorReference: string | null;
    /** text of the QR code of a euro transfer */
    qr: string | null;
  } | null;
  /** the workshop's own words */
  text: string | null;
};

/** How an amount is paid; null when nothing is to pay. A way the workshop has not set up is null in it. */
export function waysToPay(
  settings: PaySettings,
  o: { amount: number; currency: string; reference: string },
): WaysToPay | null {
  if (o.amount <= 0) return null;
  return {
    amount: o.amount,
    reference: o.reference,
    link: payLink(settings.payLink, o),
    bank: settings.iban === '' ? null : bankPart(settings, o),
    text: settings.paymentText.trim() || null,
  };
}

function bankPart(
  settings: PaySettings,
  o: { amount: number; currency: string; reference: string },
): WaysToPay['bank'] {
  const holder = settings.bankHolder.trim() || settings.name;
  const reference = o.currency === 'EUR' ? creditorReference(o.reference) : null;
  const code = epcText({
    name: holder,
    iban: settings.iban,
    bic: settings.bic,
    currency: o.currency,
    amount: o.amount,
    remittance: reference ? { reference } : { text: o.reference },
  });
  return {
    holder,
    iban: showIban(settings.iban),
    bic: settings.bic || null,
    creditorReference: reference,
    qr: code.ok ? code.text : null,
  };
}
