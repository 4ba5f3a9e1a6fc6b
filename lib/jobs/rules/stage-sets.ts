import { STAGES, type Stage } from './stages';

/** Where work, parts and wires of a repair are recorded: not before anybody has looked, and not while it is proved. */
export const WORK_STAGES: readonly Stage[] = ['assessing', 'awaiting-parts', 'on-bench'];

/** Where a unit is worked on or proved: only there may its job go over to another version of the check sheet. */
export const PROOF_STAGES: readonly Stage[] = ['on-bench', 'proving'];

/** Where a unit is inspected: there its serial is settled, and a claim is ruled on as a rule. */
export const RULING_STAGES: readonly Stage[] = ['arrived', 'assessing'];

/** Where it is as long as no ruling stands: whoever contests one and then withdraws leaves a unit to be ruled on. */
export const UNRULED_STAGES: readonly Stage[] = [
  ...RULING_STAGES,
  'awaiting-parts',
  'on-bench',
  'proving',
  'ready',
  'declined',
];

/** Where a job's unit is not with the workshop: not come yet, or gone again. */
export const NOT_WITH_US: readonly Stage[] = ['booked', 'cancelled', 'sent-back', 'closed'];

/** Where it is with the workshop. */
export const WITH_US: readonly Stage[] = STAGES.filter((stage) => !NOT_WITH_US.includes(stage));

/** Where a unit that left may still be on its way, or come back undelivered. */
export const LEFT_STAGES: readonly Stage[] = ['sent-back', 'closed'];

/** Where no news of the unit is to come: it left, or never came. */
export const NO_MORE_NEWS: readonly Stage[] = [...LEFT_STAGES, 'cancelled'];

/** Before ready: only there can a promise, which is for the day a unit is ready, still be missed by us. */
export const BEFORE_READY: readonly Stage[] = [
  'arrived',
  'assessing',
  'awaiting-parts',
  'on-bench',
  'proving',
];

/** Where the promised day can be moved: also while the customer is asked, when it is nobody's to miss. */
export const PROMISE_STAGES: readonly Stage[] = [...BEFORE_READY, 'awaiting-approval'];

/** Where a unit is packed and waits to be paid for, posted or fetched. */
export const UNFETCHED: readonly Stage[] = ['ready', 'unclaimed'];

/** Where its first certificate may still come: it has not left, and is not on its way back unrepaired. */
export const CERTIFICATE_TO_COME: readonly Stage[] = ['booked', ...PROMISE_STAGES, ...UNFETCHED];

/** The stamps a certificate prints of those the job had; the way out comes after them. */
export const CERTIFICATE_STAMPS: readonly Stage[] = ['booked', 'arrived', 'on-bench', 'ready'];

/** Where a repair may still take its parts. */
export const PARTS_TO_COME: readonly Stage[] = [
  'booked',
  'arrived',
  'assessing',
  'awaiting-approval',
  'awaiting-parts',
  'on-bench',
];

/** Where pieces that it said it waits for are for a job, here or once they come. */
export const PIECES_KEPT: readonly Stage[] = ['awaiting-parts', 'on-bench'];

/** Where somebody could begin the work before it may begin. */
export const WORK_MAY_START: readonly Stage[] = ['arrived', 'assessing', 'awaiting-approval', 'on-bench'];

/** Where a customer is told how to pay, also without an invoice. */
export const PAY_STAGES: readonly Stage[] = ['ready', 'declined', 'unclaimed', 'on-bench', 'proving'];

/** Where no repair is to come any more: called off before the unit came, or after. */
export const CALLED_OFF: readonly Stage[] = ['cancelled', 'declined'];
