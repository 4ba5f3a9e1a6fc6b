import { Tag } from '@/app/ui/page/tag';
import { type InvoiceState, STATE_WORDS } from '@/lib/invoices/rules/state';

const TONES = { open: 'warn', paid: 'good', credited: 'plain' } as const;

/** Where an invoice stands, in a word; a credit note says that it is one. */
export function InvoiceTag({ state }: { state: InvoiceState | null }) {
  if (state === null) return <Tag tone="plain">credit note</Tag>;
  return <Tag tone={TONES[state]}>{STATE_WORDS[state].label}</Tag>;
}
