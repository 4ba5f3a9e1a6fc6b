import type { Page } from '@playwright/test';
import type { Customer } from '../world/people';

/** Who takes part in the walk: the customer with a phone, somebody at the bench and somebody at the front desk. */
export type People = { who: Customer; page: Page; bench: Page; front: Page };

export type BookedJob = { number: string; link: string };
export type SentBackJob = BookedJob & { lot: string; certificate: string; code: string };
export type OpenClaim = { claim: string; number: string; link: string };
