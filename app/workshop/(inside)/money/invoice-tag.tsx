import { Tag } from '@/app/ui/page/tag';
import { compareDays, type Day } from '@/lib/calendar/day';
import { type InvoiceState, STATE_WORDS } from '@/lib/invoices/rules/state';

const TONES = { open: 'warn', paid: 'good', credited: 'plain' } as const;

type Props = { state: InvoiceState | null; dueOn: Day; today: Day };

/** Where an invoice stands, in a word; one that is not paid by its day is late, and a credit note says that it is one. */
export function InvoiceTag({ state, dueOn, today }: Props) {
  if (state === null) return <Tag tone="plain">credit note</Tag>;
  if (state === 'open' && compareDays(dueOn, today) < 0) return <Tag tone="stop">late</Tag>;
  return <Tag tone={TONES[state]}>{STATE_WORDS[state].label}</Tag>;
}
