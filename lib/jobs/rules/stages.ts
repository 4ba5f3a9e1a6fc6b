/**
 * The life of a job, in one table. Screens, permissions, mail, tests and the diagram in DEVELOPERS.md all read it.
 *
 * stage    where a job stands, one word on its run of stamps
 * move     one action that takes a job from one stage to the next
 * needs    facts that must hold before a move (see guards.ts)
 * mail     the message the customer gets in the same transaction
 */

export const STAGES = [
  'booked',
  'arrived',
  'assessing',
  'awaiting-approval',
  'awaiting-parts',
  'on-bench',
  'proving',
  'ready',
  'sent-back',
  'closed',
  'cancelled',
  'declined',
  'unclaimed',
] as const;
export type Stage = (typeof STAGES)[number];

export type JobKind = 'repair' | 'claim';
export type MoveBy = 'customer' | 'staff' | 'owner' | 'clock';

export type Need =
  | 'serial-settled'
  | 'finding-recorded'
  | 'offer-sent'
  | 'start-allowed'
  | 'may-withdraw'
  | 'ruled'
  | 'free-or-agreed'
  | 'price-agreed'
  | 'ruled-not-covered'
  | 'something-covered'
  | 'nothing-covered'
  | 'work-recorded'
  | 'checks-passed'
  | 'no-recalled-part'
  | 'check-failed'
  | 'not-as-it-came'
  | 'not-repaired'
  | 'nothing-undone'
  | 'nothing-owed'
  | 'handover-named'
  | 'went-by-carrier'
  | 'went'
  | 'was-booked'
  | 'nothing-recorded'
  | 'came-unbooked'
  | 'no-price-agreed'
  | 'no-money'
  | 'not-left-before'
  | 'not-sought'
  | 'may-contest'
  | 'not-left'
  | 'not-done-as-covered'
  | 'no-held'
  | 'price-lapsed';

export type StageMail =
  | 'job-booked'
  | 'job-cancelled'
  | 'unit-arrived'
  | 'arrival-undone'
  | 'approval-asked'
  | 'approval-recorded'
  | 'offer-lapsed'
  | 'price-taken-back'
  | 'withdrawal-recorded'
  | 'repair-stopped'
  | 'work-reopened'
  | 'unit-ready'
  | 'unit-sent-back'
  | 'parcel-came-back'
  | 'dispatch-undone'
  | 'claim-reopened'
  | 'unclaimed-notice'
  | 'unclaimed-decided';

export type Move = {
  readonly key: string;
  readonly from: readonly Stage[];
  readonly to: Stage;
  readonly by: readonly MoveBy[];
  /** Kinds of job that may take it; both when absent. */
  readonly only?: JobKind;
  readonly needs: readonly Need[];
  readonly mail?: StageMail;
  /** What the button says, and the consequence written under it. */
  readonly label: string;
  readonly consequence: string;
};

export const MOVES = [
  {
    key: 'arrive',
    from: ['booked'],
    to: 'arrived',
    by: ['staff'],
    needs: [],
    mail: 'unit-arrived',
    label: 'Take in',
    consequence: 'Tells the customer that the unit is here, with any difference to the booking.',
  },
  {
    key: 'cancel',
    from: ['booked'],
    to: 'cancelled',
    by: ['customer', 'staff'],
    needs: [],
    mail: 'job-cancelled',
    label: 'Cancel the booking',
    consequence: 'Nothing is owed. A parcel that still arrives goes back unopened.',
  },
  {
    key: 'undo-arrival',
    from: ['arrived'],
    to: 'booked',
    by: ['staff'],
    needs: ['was-booked', 'nothing-recorded'],
    mail: 'arrival-undone',
    label: 'It is not here after all',
    consequence:
      'For a parcel that was taken in under the wrong booking. We wait for the right one again; the photos of the arrival go for good, and the customer is told.',
  },
  {
    key: 'is-of-booking',
    from: ['arrived', 'assessing'],
    to: 'cancelled',
    by: ['staff'],
    only: 'repair',
    needs: ['came-unbooked', 'nothing-recorded', 'no-price-agreed', 'no-money'],
    label: 'It is the parcel of a booking',
    consequence:
      'For a job that was opened for a parcel whose customer had booked. The parcel is taken in under the booking, which must have the same e-mail address, with the photos and messages of this job, and this job ends. Of that the customer hears nothing but that their booked unit is here.',
  },
  {
    key: 'assess',
    from: ['arrived'],
    to: 'assessing',
    by: ['staff'],
    needs: ['serial-settled'],
    label: 'Start assessing',
    consequence: 'The customer sees that the unit is being looked at. No mail.',
  },
  {
    key: 'ask-approval',
    from: ['assessing', 'on-bench'],
    to: 'awaiting-approval',
    by: ['staff'],
    needs: ['ruled', 'finding-recorded', 'offer-sent'],
    mail: 'approval-asked',
    label: 'Ask for approval',
    consequence: 'Sends the customer the price with the findings. The job waits for the answer.',
  },
  {
    key: 'approve',
    from: ['awaiting-approval'],
    to: 'on-bench',
    by: ['customer', 'staff'],
    needs: [],
    mail: 'approval-recorded',
    label: 'Yes, go ahead',
    consequence: 'The repair goes on at the new price.',
  },
  {
    key: 'decline',
    from: ['awaiting-approval'],
    to: 'declined',
    by: ['customer', 'staff'],
    needs: ['nothing-covered'],
    mail: 'approval-recorded',
    label: 'No, send it back',
    consequence: 'The unit comes back unrepaired for the return fee.',
  },
  {
    key: 'decline-the-rest',
    from: ['awaiting-approval'],
    to: 'on-bench',
    by: ['customer', 'staff'],
    only: 'claim',
    needs: ['something-covered'],
    mail: 'approval-recorded',
    label: 'No, only the covered part',
    consequence: 'The covered part is repaired free of charge, and the rest stays as it is.',
  },
  {
    key: 'approve-after-no',
    from: ['declined'],
    to: 'on-bench',
    by: ['customer', 'staff'],
    needs: ['no-held'],
    mail: 'approval-recorded',
    label: 'Yes after all',
    consequence: 'The repair goes on at the price that was declined first.',
  },
  {
    key: 'approve-late',
    from: ['assessing', 'awaiting-parts', 'on-bench', 'proving', 'ready'],
    to: 'on-bench',
    by: ['staff'],
    needs: ['price-lapsed'],
    mail: 'approval-recorded',
    label: 'Yes, told before the price lapsed',
    consequence: 'The repair goes on at that price. What was proved already is proved again.',
  },
  {
    key: 'approve-late-waiting',
    from: ['awaiting-parts'],
    to: 'awaiting-parts',
    by: ['staff'],
    needs: ['price-lapsed'],
    mail: 'approval-recorded',
    label: 'Yes, told before the price lapsed',
    consequence: 'The repair goes on at that price once the part it waits for is here.',
  },
  {
    key: 'decline-late',
    from: ['assessing', 'awaiting-parts', 'on-bench'],
    to: 'declined',
    by: ['staff'],
    needs: ['price-lapsed', 'nothing-covered'],
    mail: 'approval-recorded',
    label: 'No, told before the price lapsed',
    consequence: 'The unit comes back unrepaired for the return fee.',
  },
  {
    key: 'decline-the-rest-late',
    from: ['assessing', 'on-bench'],
    to: 'on-bench',
    by: ['staff'],
    only: 'claim',
    needs: ['price-lapsed', 'something-covered'],
    mail: 'approval-recorded',
    label: 'No to the rest, told before the price lapsed',
    consequence: 'The covered part is repaired free of charge, and the rest stays as it is.',
  },
  {
    key: 'decline-the-rest-late-waiting',
    from: ['awaiting-parts'],
    to: 'awaiting-parts',
    by: ['staff'],
    only: 'claim',
    needs: ['price-lapsed', 'something-covered'],
    mail: 'approval-recorded',
    label: 'No to the rest, told before the price lapsed',
    consequence:
      'What is covered is repaired once the part it waits for is here, and the rest stays as it is.',
  },
  {
    key: 'take-back-price',
    from: ['awaiting-approval'],
    to: 'assessing',
    by: ['staff'],
    needs: [],
    mail: 'price-taken-back',
    label: 'Take the price back',
    consequence:
      'Tells the customer, with your reason. While it would have held, the next one may be higher only if they ask for the change or you record another finding.',
  },
  {
    key: 'lapse',
    from: ['awaiting-approval'],
    to: 'assessing',
    by: ['clock'],
    needs: ['offer-sent'],
    mail: 'offer-lapsed',
    label: 'Let the price lapse',
    consequence: 'The day it held until has passed without an answer. Write another price.',
  },
  {
    key: 'start-bench',
    from: ['assessing'],
    to: 'on-bench',
    by: ['staff'],
    needs: ['ruled', 'free-or-agreed', 'price-agreed', 'start-allowed'],
    label: 'Put on the bench',
    consequence: 'The repair starts at the agreed price. No mail.',
  },
  {
    key: 'wait-for-parts',
    from: ['assessing', 'on-bench'],
    to: 'awaiting-parts',
    by: ['staff'],
    needs: ['ruled', 'free-or-agreed', 'price-agreed', 'start-allowed'],
    label: 'Wait for parts',
    consequence:
      'The customer sees that a part is on its way, and the day it should come. The order list counts it. No mail.',
  },
  {
    key: 'parts-in',
    from: ['awaiting-parts'],
    to: 'on-bench',
    by: ['staff'],
    needs: [],
    label: 'Parts are in',
    consequence: 'Back on the bench. No mail.',
  },
  {
    key: 'prove',
    from: ['on-bench'],
    to: 'proving',
    by: ['staff'],
    needs: ['work-recorded', 'start-allowed'],
    label: 'Start proving',
    consequence: 'Opens the check sheet. Every check must pass before the unit may go back.',
  },
  {
    key: 'fail-check',
    from: ['proving'],
    to: 'on-bench',
    by: ['staff'],
    needs: ['check-failed'],
    label: 'Back to the bench',
    consequence: 'The failed reading stays on the sheet; the check is done again after the work.',
  },
  {
    key: 'pass-checks',
    from: ['proving'],
    to: 'ready',
    by: ['staff'],
    needs: ['checks-passed', 'no-recalled-part'],
    mail: 'unit-ready',
    label: 'Proved: ready to go back',
    consequence: 'Tells the customer it is ready, and what is left to pay.',
  },
  {
    key: 'reopen-work',
    from: ['proving', 'ready'],
    to: 'on-bench',
    by: ['staff'],
    needs: ['not-as-it-came', 'not-left-before'],
    mail: 'work-reopened',
    label: 'Open the work again',
    consequence:
      'Back on the bench: record what is done, and do every check again. A customer who was told that the unit is ready is told why it takes longer.',
  },
  {
    key: 'return-unrepaired',
    from: ['assessing'],
    to: 'ready',
    by: ['staff'],
    only: 'claim',
    needs: ['ruled', 'ruled-not-covered', 'nothing-undone'],
    mail: 'unit-ready',
    label: 'Return without repair',
    consequence:
      'Tells the customer that the unit is packed and goes back as ruled. Until it leaves they can contest the ruling, so give them time to read it.',
  },
  {
    key: 'contest',
    from: ['assessing', 'awaiting-approval', 'awaiting-parts', 'on-bench', 'proving', 'ready', 'declined'],
    to: 'assessing',
    by: ['customer', 'staff'],
    only: 'claim',
    needs: ['may-contest'],
    label: 'Ask us to look again',
    consequence: 'We look at your unit and your words again. You can ask this once.',
  },
  {
    key: 'look-again',
    from: ['assessing', 'awaiting-approval', 'awaiting-parts', 'on-bench', 'proving', 'ready', 'declined'],
    to: 'assessing',
    by: ['owner'],
    only: 'claim',
    needs: ['ruled', 'not-left', 'not-done-as-covered'],
    mail: 'claim-reopened',
    label: 'Look at the ruling again',
    consequence:
      'The ruling no longer stands, and the customer is told so with your reason. Inspect, and rule anew. They can still contest as before.',
  },
  {
    key: 'withdraw',
    from: ['arrived', 'assessing', 'awaiting-approval', 'awaiting-parts', 'on-bench', 'proving'],
    to: 'declined',
    by: ['customer', 'staff'],
    needs: ['nothing-covered', 'may-withdraw'],
    mail: 'withdrawal-recorded',
    label: 'Withdraw from the contract',
    consequence:
      'The unit comes back unrepaired. Work done after the customer asked for the start is paid in part.',
  },
  {
    key: 'stop-repair',
    from: ['assessing', 'awaiting-approval', 'awaiting-parts', 'on-bench', 'proving'],
    to: 'declined',
    by: ['staff'],
    needs: ['ruled'],
    mail: 'repair-stopped',
    label: 'Send back unrepaired',
    consequence:
      'Tells the customer why, and what is owed. A price that waits for an answer no longer stands.',
  },
  {
    key: 'pack-unrepaired',
    from: ['declined'],
    to: 'ready',
    by: ['staff'],
    needs: ['ruled'],
    mail: 'unit-ready',
    label: 'Packed for return',
    consequence:
      'Tells the customer what the return costs and that the unit goes out once it is paid. From then on a no to a price can no longer become a yes.',
  },
  {
    key: 'repair-after-all',
    from: ['declined', 'ready'],
    to: 'assessing',
    by: ['staff'],
    only: 'claim',
    needs: ['something-covered', 'not-repaired'],
    label: 'Repair what is covered',
    consequence:
      'Comes with the ruling on a claim that was contested, and then withdrawn from: what is covered is repaired all the same.',
  },
  {
    key: 'dispatch',
    from: ['ready'],
    to: 'sent-back',
    by: ['staff'],
    needs: ['ruled', 'nothing-owed', 'no-recalled-part', 'handover-named'],
    mail: 'unit-sent-back',
    label: 'Send back',
    consequence:
      'Issues the certificate where a repair was done, and tells the customer the carrier reference.',
  },
  {
    key: 'close',
    from: ['sent-back'],
    to: 'closed',
    by: ['staff', 'clock'],
    needs: ['not-sought'],
    label: 'Close the job',
    consequence:
      'The unit is with the customer. No mail. Left alone, the job closes by itself once it surely has come.',
  },
  {
    key: 'came-back',
    from: ['sent-back', 'closed'],
    to: 'ready',
    by: ['staff'],
    needs: ['went-by-carrier'],
    mail: 'parcel-came-back',
    label: 'The parcel came back to us',
    consequence:
      'Ready to go again. Tells the customer why, and asks for their address. The certificate stands as it was issued.',
  },
  {
    key: 'undo-dispatch',
    from: ['sent-back', 'closed'],
    to: 'ready',
    by: ['staff'],
    needs: ['went'],
    mail: 'dispatch-undone',
    label: 'It has not left after all',
    consequence:
      'For a unit that was recorded as sent or collected by mistake. It is ready to go again, and the customer is told. A certificate stands as it was issued.',
  },
  {
    key: 'set-aside',
    from: ['ready'],
    to: 'unclaimed',
    by: ['owner', 'clock'],
    needs: [],
    mail: 'unclaimed-notice',
    label: 'Set aside as unclaimed',
    consequence: 'Sends the first notice. What may be done with the unit after the last is for local law.',
  },
  {
    key: 'take-up-again',
    from: ['unclaimed'],
    to: 'ready',
    by: ['staff', 'owner'],
    needs: [],
    label: 'Take up again',
    consequence: 'The customer has answered; the unit waits to go back.',
  },
  {
    key: 'settle-unclaimed',
    from: ['unclaimed'],
    to: 'closed',
    by: ['owner'],
    needs: [],
    mail: 'unclaimed-decided',
    label: 'Record what became of it',
    consequence:
      'Closes the job and tells the customer. Only after the last notice, and as local law allows.',
  },
] as const satisfies readonly Move[];

export type MoveKey = (typeof MOVES)[number]['key'];

/** The moves of a unit that is here although it left: the post brought it back, or it was recorded as gone by mistake. */
const HERE_AGAIN: ReadonlySet<string> = new Set(['came-back', 'undo-dispatch']);

/** Stages in which a job ends: no move leaves them, but those of a unit that is here again. */
export const FINAL_STAGES: readonly Stage[] = STAGES.filter(
  (stage) =>
    !MOVES.some((move) => !HERE_AGAIN.has(move.key) && (move.from as readonly Stage[]).includes(stage)),
);

export function isStage(text: string): text is Stage {
  return (STAGES as readonly string[]).includes(text);
}

export function moveOf(key: MoveKey): Move {
  const move = MOVES.find((candidate) => candidate.key === key);
  if (!move) throw new RangeError(`no move called ${key}`);
  return move;
}

/** Moves that leave a stage for a kind of job, in the table's order. */
export function movesFrom(stage: Stage, kind: JobKind): readonly (Move & { readonly key: MoveKey })[] {
  return MOVES.filter((move) => {
    const open: Move = move;
    return open.from.includes(stage) && (open.only === undefined || open.only === kind);
  });
}

/** The words customers and staff read for each stage. */
export const STAGE_WORDS: Record<Stage, { label: string; customer: string }> = {
  booked: { label: 'Booked', customer: 'We are waiting for your parcel.' },
  arrived: { label: 'Arrived', customer: 'Your unit is here and waits for its turn.' },
  assessing: { label: 'Assessing', customer: 'We are finding out what is wrong.' },
  'awaiting-approval': { label: 'Awaiting approval', customer: 'We need your yes or no to a price.' },
  'awaiting-parts': { label: 'Awaiting parts', customer: 'A part for your unit is on its way to us.' },
  'on-bench': { label: 'On the bench', customer: 'Your unit is being repaired.' },
  proving: { label: 'Proving', customer: 'The repair is done. We are testing that it holds.' },
  ready: { label: 'Ready', customer: 'Your unit is ready to go back.' },
  'sent-back': { label: 'Sent back', customer: 'Your unit is on its way to you.' },
  closed: { label: 'Closed', customer: 'This job is finished.' },
  cancelled: { label: 'Cancelled', customer: 'This booking was cancelled.' },
  declined: { label: 'Declined', customer: 'Your unit comes back unrepaired.' },
  unclaimed: { label: 'Unclaimed', customer: 'Your unit is ready, and we have not heard from you.' },
};

/** The stages drawn as a run of stamps, in the order a job usually sees them. */
export const STAMP_RUN: readonly Stage[] = [
  'booked',
  'arrived',
  'assessing',
  'awaiting-approval',
  'awaiting-parts',
  'on-bench',
  'proving',
  'ready',
  'sent-back',
  'closed',
];
