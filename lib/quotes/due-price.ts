import type { WorkshopCard } from '@/lib/workshop/records';

/** A price that waits for an answer, as far as the clock is concerned. */
export type DuePrice = {
  id: string;
  revision: number;
  grossMinor: number;
  issuedAt: Date;
  validUntil: Date;
  remindedAt: Date | null;
  /** `jobId` is null for a price that was asked for and has no job yet */
  quote: { id: string; jobId: string | null };
};

/** What one step of the clock needs beside the price. */
export type LapseCall = { workshop: WorkshopCard; now: Date };
