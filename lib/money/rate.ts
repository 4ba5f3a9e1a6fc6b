/** A rate in hundredths of a percent as people write it: 2000 is '20%', 550 is '5.5%'. */
export function showRate(rateBps: number): string {
  const whole = Math.floor(rateBps / 100);
  const rest = String(rateBps % 100)
    .padStart(2, '0')
    .replace(/0+$/, '');
  return rest === '' ? `${whole}%` : `${whole}.${rest}%`;
}
