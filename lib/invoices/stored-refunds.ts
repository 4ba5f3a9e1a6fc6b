import { rememberFor } from '@/lib/remembered';
import type { ToGiveBack } from './list-to-give-back';

/**
 * What Today lists of money to give back, kept for a minute by each process: every payment is added up for it, and Today is opened
 * all day. A payment forgets it, so that what was given back leaves the list at once where it was entered.
 */
export const keptRefunds = rememberFor<ToGiveBack[]>(60_000);
