import type { Setting } from './letter';
import { money } from './words';

/** What money paid before any price was agreed is for. */
export function towardsSentence(balance: number, setting: Setting): string {
  if (balance >= 0) return 'No price is agreed yet. You pay nothing before you have said yes to one.';
  return `${money(-balance, setting)} is here and counts towards the price that is still to be agreed. You pay nothing more before you have said yes to it.`;
}

/** What is left to pay, nothing, or what comes back, as one sentence. */
export function leftSentence(balance: number, setting: Setting): string {
  if (balance > 0) return `${money(balance, setting)} with tax is left to pay.`;
  if (balance < 0) return `We give ${money(-balance, setting)} back the way it came.`;
  return `Nothing is left to pay (${money(0, setting)}).`;
}
