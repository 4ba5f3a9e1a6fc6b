import type { TaxBreakdown } from './tax';

/** A rate in hundredths of a percent as people write it: 2000 is '20%', 550 is '5.5%'. */
export function showRate(rateBps: number): string {
  return `${rateBps / 100}%`;
}

/** The tax of one line beside its amount, where its name heads the column: '20%', 'exempt'. */
export function rateInWords({ category, rateBps }: { category: string; rateBps: number }): string {
  if (category === 'E') return 'exempt';
  return category === 'O' ? 'outside' : showRate(rateBps);
}

/** A tax with what it is called here, on papers and screens alike: 'VAT 20%', 'Exempt from VAT'. */
export function taxInWords(tax: Pick<TaxBreakdown, 'category' | 'rateBps'>, taxName: string): string {
  switch (tax.category) {
    case 'S':
      return `${taxName} ${showRate(tax.rateBps)}`;
    case 'Z':
      return `${taxName} 0%, zero rate`;
    case 'E':
      return `Exempt from ${taxName}`;
    case 'O':
      return `Outside ${taxName}`;
  }
}
