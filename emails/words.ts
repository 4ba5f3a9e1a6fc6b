import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { formatMoney } from '@/lib/money/amount';
import { feesWords } from '@/lib/quotes/rules/after-no';
import type { Setting } from './letter';

/** An amount in the workshop's currency: '£14.50'. */
export function money(minor: number, { workshop }: Setting): string {
  return formatMoney(minor, workshop.currency, workshop.locale);
}

/** What something costs the customer; nothing is said in words and in figures: 'free of charge (£0.00)'. */
export function cost(minor: number, setting: Setting): string {
  return minor === 0 ? `free of charge (${money(0, setting)})` : `${money(minor, setting)} with tax`;
}

/** A day with its weekday: 'Thursday 3 December 2026'. */
export function fullDay(d: Day, { workshop }: Setting): string {
  return formatDay(d, workshop.locale, 'weekday');
}

/** The price the customer agreed to, as one sentence. */
export function agreedCost(setting: Setting): string {
  if (setting.job.isPriceOpen)
    return `No price is agreed yet. You pay nothing before you have said yes to one.`;
  if (setting.job.kind === 'claim' && setting.job.agreed === 0)
    return `What your certificate covers is free of charge (${money(0, setting)}). We ask you before anything costs you money.`;
  if (setting.job.agreed === 0) return `This job is free of charge for you (${money(0, setting)}).`;
  return `${money(setting.job.agreed, setting)} with tax, as agreed. That has not changed.`;
}

/** What a message is about, in a word. */
export function thing({ job }: Setting): 'job' | 'quote' {
  return job.kind === 'quote' ? 'quote' : 'job';
}

/** How to reach a person: 'Answer this message, or call 01632 960123.' Empty when the workshop has told neither. */
export function reach({ workshop }: Setting): string {
  if (workshop.email && workshop.phone) return `Answer this message, or call ${workshop.phone}.`;
  if (workshop.email) return 'Answer this message.';
  return workshop.phone ? `Call ${workshop.phone}.` : '';
}

type AfterNo = { returnFee: number | null; inspectionFee?: number | undefined; previousGross?: number };

/** What a no to a changed price costs, fee by fee; a no to the rest of a claim leaves what was agreed before. */
export function costOfNo(o: AfterNo, setting: Setting): string {
  if (o.returnFee === null) return cost(o.previousGross ?? setting.job.agreed, setting);
  return feesOf({ returnFee: o.returnFee, inspectionFee: o.inspectionFee ?? 0 }, setting);
}

/** What is owed for a unit that goes back unrepaired: 'the return fee of £9.60, and nothing else'. */
export function feesOf(o: { returnFee: number; inspectionFee: number }, setting: Setting): string {
  return feesWords(o, (minor) => money(minor, setting));
}
