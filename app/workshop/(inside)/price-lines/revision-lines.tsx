import { PriceTable } from '@/app/ui/page/price-table';
import { shownPrice } from '@/lib/quotes/rules/shown-price';
import { readLine } from '@/lib/quotes/stored-lines';

type Revision = {
  isGross: boolean;
  netMinor: number;
  taxMinor: number;
  grossMinor: number;
  lines: readonly Parameters<typeof readLine>[0][];
};

type Props = { revision: Revision; taxName: string; money: (minor: number) => string };

/** One revision of a price on the workshop's side: its lines and its sums, as the customer reads them. */
export function RevisionLines({ revision, taxName, money }: Props) {
  const price = shownPrice({ ...revision, lines: revision.lines.map(readLine) }, taxName);
  return <PriceTable caption="Lines" price={price} money={money} />;
}
