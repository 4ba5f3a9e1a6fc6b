import type { Page } from '@playwright/test';
import type { Customer } from '../world/people';

/** The customer with a phone, the front desk and the bench. */
export type People = { who: Customer; page: Page; bench: Page; front: Page };

export type AskedQuote = { number: string; link: string };
export type BookedQuote = AskedQuote & { job: string; jobLink: string };
