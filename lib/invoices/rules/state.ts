export const INVOICE_STATES = ['open', 'paid', 'credited'] as const;
export type InvoiceState = (typeof INVOICE_STATES)[number];

/** What the states of an invoice are called, and what they mean for the workshop. */
export const STATE_WORDS: Record<InvoiceState, { label: string; meaning: string }> = {
  open: { label: 'open', meaning: 'Something is left to pay.' },
  paid: { label: 'paid', meaning: 'Nothing is left to pay.' },
  credited: { label: 'credited', meaning: 'All of it was taken off by credit notes.' },
};

/**
 * Where an invoice stands: credited in full, or open or paid by what is owed on its job, in minor units.
 * invoiceState({ leftToCredit: 7200, owed: 0 }) -> 'paid'
 */
export function invoiceState(o: { leftToCredit: number; owed: number }): InvoiceState {
  if (o.leftToCredit <= 0) return 'credited';
  return o.owed > 0 ? 'open' : 'paid';
}
