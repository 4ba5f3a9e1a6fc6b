import { drawBagLabel, drawBagLabelSheet } from '@/lib/documents/bag-label';
import { drawCertificate } from '@/lib/documents/certificate';
import { drawCustomsNote } from '@/lib/documents/customs-note';
import { drawInvoice } from '@/lib/documents/invoice';
import { drawPackingSlip } from '@/lib/documents/packing-slip';
import { drawQuote } from '@/lib/documents/quote';
import { drawReceipt } from '@/lib/documents/receipt';
import { drawRepairForm } from '@/lib/documents/repair-form';
import {
  certificate,
  creditNote,
  customs,
  form,
  invoice,
  label,
  labelSetting,
  quote,
  receipt,
  slip,
} from '@/tests/documents/demo';

const letter = { ...slip.setting, paper: 'LETTER' as const };

/** Each document of the house from the demo workshop, by name; the margin is where its text may begin. */
export const everyDocument = [
  { name: 'packing slip', margin: 38, draw: () => drawPackingSlip(slip) },
  { name: 'packing slip on Letter', margin: 38, draw: () => drawPackingSlip({ ...slip, setting: letter }) },
  { name: 'certificate', margin: 38, draw: () => drawCertificate(certificate) },
  {
    name: 'certificate on Letter',
    margin: 38,
    draw: () => drawCertificate({ ...certificate, setting: letter }),
  },
  { name: 'quote', margin: 38, draw: () => drawQuote(quote) },
  {
    name: 'quote that was answered',
    margin: 38,
    draw: () => drawQuote({ ...quote, outcome: 'Your answer of 9 December 2026: I agree to £60.00.' }),
  },
  { name: 'repair form', margin: 38, draw: () => drawRepairForm(form) },
  {
    name: 'repair form on Letter',
    margin: 38,
    draw: () => drawRepairForm({ ...form, setting: letter }),
  },
  { name: 'invoice', margin: 38, draw: () => drawInvoice(invoice) },
  {
    name: 'invoice on Letter',
    margin: 38,
    draw: () => drawInvoice({ ...invoice, setting: letter }),
  },
  { name: 'credit note', margin: 38, draw: () => drawInvoice(creditNote) },
  { name: 'receipt', margin: 38, draw: () => drawReceipt(receipt) },
  { name: 'customs note', margin: 38, draw: () => drawCustomsNote(customs) },
  {
    name: 'customs note on Letter',
    margin: 38,
    draw: () => drawCustomsNote({ ...customs, setting: letter }),
  },
  { name: 'bag label', margin: 0, draw: () => drawBagLabel(label, labelSetting) },
  {
    name: 'sheet of bag labels',
    margin: 0,
    draw: () => drawBagLabelSheet([label, label, label], labelSetting),
  },
] as const;
