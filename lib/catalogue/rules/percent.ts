/** A rate of tax in percent: 2000 is '20', 550 is '5.5'. */
export function percentText(rateBps: number): string {
  return String(rateBps / 100);
}

/** A rate as people write it, in percent with up to two decimals: '20' and '5,5' are 2000 and 550; null for anything else. */
export function readPercent(text: string): number | null {
  if (!/^\d{1,2}([.,]\d{1,2})?$/.test(text)) return null;
  const [whole = '0', decimals = ''] = text.split(/[.,]/);
  return Number(whole) * 100 + Number(decimals.padEnd(2, '0'));
}
