import { formatMoney } from '@/lib/money/amount';

/**
 * An amount in whole minor units, written as the workshop's locale writes money.
 *
 * ```tsx
 * <Money minor={4800} currency="GBP" locale="en-GB" />   // £48.00
 * ```
 */
export function Money(props: { minor: number; currency: string; locale: string }) {
  return <span className="money">{formatMoney(props.minor, props.currency, props.locale)}</span>;
}
