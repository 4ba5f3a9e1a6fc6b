import { daysOver, expectedWords } from '@/lib/bench/rules/on-order';
import { compareDays, type Day, maxDay } from '@/lib/calendar/day';

/** A part that a job waits for, with what is known of its coming. */
export type AwaitedPart = {
  /** null for one that is not on the list of parts */
  partId: string | null;
  name: string;
  /** pieces it has not taken yet */
  quantity: number;
  /** pieces in stock that are for this job, not for one before it; 0 for one that is not on the list */
  here: number;
  /** some are not here, and all of those are still to come of open orders */
  isOnOrder: boolean;
  /** false once the bench said that the job does not need it: it has no pieces to wait for then */
  isNeeded: boolean;
  /** the day of the open order with which its last piece comes, else the one typed with the job; null where neither says one */
  expectedOn: Day | null;
};

/** True once as many pieces are here for the job as it waits for. One that is not on the list is never seen to be here. */
export function isHere({ partId, here, quantity }: AwaitedPart): boolean {
  return partId !== null && here >= quantity;
}

export type PartsWait = {
  /** every part is in stock */
  isAllHere: boolean;
  /** the day by which the last of those that are not here should come; null where one of them has no day */
  expectedOn: Day | null;
  /** days past the first of them that is over; 0 where none is */
  daysOver: number;
};

/**
 * How a job that waits for parts stands; null where nobody has said for which.
 * Example: a socket in stock and a display expected on 3 December wait until 3 December.
 */
export function partsWait(parts: readonly AwaitedPart[], today: Day): PartsWait | null {
  if (parts.length === 0) return null;
  const missing = parts.filter((part) => !isHere(part));
  const days = missing.map(({ expectedOn }) => expectedOn);
  return {
    isAllHere: missing.length === 0,
    expectedOn: days.reduce((last, on) => (last && on ? maxDay(last, on) : null), days[0] ?? null),
    daysOver: Math.max(0, ...days.map((on) => daysOver(on, today))),
  };
}

/** 'USB-C socket', and with more pieces than one '2 × USB-C socket'. */
export function piecesWords({ name, quantity }: Pick<AwaitedPart, 'name' | 'quantity'>): string {
  return quantity === 1 ? name : `${quantity} × ${name}`;
}

/**
 * One awaited part for the workshop: which, and until when.
 *
 * 'USB-C socket: expected 3 Dec 2026, 2 days over'; '2 × Knob: in stock'; 'Long display: not ordered, no day known'; 'Fuse: taken';
 * 'Knob: not needed'
 */
export function awaitedWords(part: AwaitedPart, o: { today: Day; locale: string }): string {
  if (!part.isNeeded) return `${part.name}: not needed`;
  if (part.quantity === 0) return `${part.name}: taken`;
  const which = piecesWords(part);
  if (isHere(part)) return `${which}: in stock`;
  const isToOrder = part.partId !== null && !part.isOnOrder;
  return `${which}: ${isToOrder ? 'not ordered, ' : ''}${expectedWords(part.expectedOn, o)}`;
}

/** The day a customer may be told: when the last missing part should be here. Null without one, and once it is past. */
export function comingOn(parts: readonly AwaitedPart[], today: Day): Day | null {
  const on = partsWait(parts, today)?.expectedOn ?? null;
  return on !== null && compareDays(on, today) >= 0 ? on : null;
}
