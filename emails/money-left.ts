import { backSentence } from '@/lib/invoices/rules/money-words';
import type { FactsOf } from '@/lib/mail/rules/content';
import type { Setting } from './letter';
import { fullDay, money } from './words';

/** What money paid before any price was agreed is for. */
export function towardsSentence(balance: number, setting: Setting): string {
  if (balance >= 0) return 'No price is agreed yet. You pay nothing before you have said yes to one.';
  return `${money(-balance, setting)} is here and counts towards the price that is still to be agreed. You pay nothing more before you have said yes to it.`;
}

/** What is left to pay, nothing, or what comes back, as one sentence. */
export function leftSentence(balance: number, setting: Setting): string {
  if (balance > 0) return `${money(balance, setting)} with tax is left to pay.`;
  if (balance < 0) return backSentence(money(-balance, setting));
  return `Nothing is left to pay (${money(0, setting)}).`;
}

/** What became of the invoices that were issued ahead: ' Invoice 2026-00001 is credited. …' Empty without one. */
export function replacedSentence(
  replaced: FactsOf<'approval-recorded'>['replaced'],
  setting: Setting,
): string {
  if (!replaced) return '';
  const { credited, invoice } = replaced;
  const old =
    credited.length === 1
      ? `Invoice ${credited[0]} is credited and no longer holds.`
      : `The invoices ${credited.join(' and ')} are credited and no longer hold.`;
  if (!invoice) return ` ${old}`;
  const due = invoice.dueOn ? ` Please pay what is left by ${fullDay(invoice.dueOn, setting)}.` : '';
  return ` ${old} Invoice ${invoice.number} takes ${credited.length === 1 ? 'its' : 'their'} place. It is on the job page.${due}`;
}
