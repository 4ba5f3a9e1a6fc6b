import type { Page } from '@playwright/test';
import type { Customer } from '../world/people';

/** A customer, and the staff of the day: the front desk and the bench each with a phone and a wide screen, and the owner. */
export type People = {
  who: Customer;
  page: Page;
  frontPhone: Page;
  front: Page;
  benchPhone: Page;
  bench: Page;
  owner: Page;
};

/** Numbers of the jobs that the morning left to somebody. */
export type Morning = { settled: string; otherUnit: string; unbooked: string };
/** Numbers of the jobs that came off the bench or wait for an answer. */
export type AtTheBench = { proved: string; redone: string; asked: string };
export type Afternoon = { sentBack: string; claim: string; setAside: string };
