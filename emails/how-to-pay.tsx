import { paidAlready } from '@/lib/invoices/rules/money-words';
import { type WaysToPay, waysToPay } from '@/lib/invoices/rules/ways-to-pay';
import { Action, Lines, Para, Words } from './frame';
import type { Setting } from './letter';
import { money } from './words';

/** How the amount left is paid: the payment page, the bank, and the workshop's own words, as far as they are set up. */
export function HowToPay({ balance, reference, setting }: HowToPayProps) {
  const ways = waysOf({ balance, reference, setting });
  if (!ways) return null;
  return (
    <>
      {ways.link ? <Action href={ways.link}>{`Pay ${money(balance, setting)} online`}</Action> : null}
      {ways.bank ? <Lines items={bankLines(ways, money(balance, setting))} /> : null}
      {ways.text ? <Words from={`How to pay ${money(balance, setting)}`}>{ways.text}</Words> : null}
      <Para>{paidAlready({ within: setting.workshop.answerWithin, place: 'on the job page' })}</Para>
    </>
  );
}

export type HowToPayProps = { balance: number; reference: string; setting: Setting };

/** The reference as it is asked for: with its check digits where a transfer in euro takes them. */
export function shownReference(props: HowToPayProps): string {
  return waysOf(props)?.bank?.creditorReference ?? props.reference;
}

function waysOf({ balance, reference, setting }: HowToPayProps): WaysToPay | null {
  return waysToPay(setting.workshop, { amount: balance, currency: setting.workshop.currency, reference });
}

function bankLines(ways: WaysToPay, amount: string) {
  const { bank } = ways;
  if (!bank) return [];
  return [
    { term: 'Bank transfer to', text: bank.holder },
    { term: 'IBAN', text: bank.iban, isMono: true },
    ...(bank.bic ? [{ term: 'BIC', text: bank.bic, isMono: true }] : []),
    { term: 'Amount', text: amount },
    { term: 'Reference', text: bank.creditorReference ?? ways.reference, isMono: true },
  ];
}
