import type { Setting } from './letter';
import { money } from './words';

/** What is left to pay, nothing, or what comes back, as one sentence. */
export function leftSentence(balance: number, setting: Setting): string {
  if (balance > 0) return `${money(balance, setting)} with tax is left to pay.`;
  if (balance < 0) return `We give ${money(-balance, setting)} back the way it came.`;
  return `Nothing is left to pay (${money(0, setting)}).`;
}
