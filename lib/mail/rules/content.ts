/**
 * What a message can say. Glossary:
 * - template: the kind of message; one file in emails/ draws each.
 * - facts: what happened, kept with the message as it was when queued. Never a token, name or address: those are read
 *   again when the message is drawn, so that a corrected address or a renewed link is the one that goes out.
 */
import { z } from 'zod';
import { type Day, isDay } from '@/lib/calendar/day';
import { SEARCH_ENDS } from '@/lib/jobs/rules/parcel-search';
import { STOPS } from '@/lib/jobs/rules/stop';
import { TOLD } from '@/lib/jobs/rules/told';

const calendarDay = z.custom<Day>((value) => typeof value === 'string' && isDay(value), 'not a calendar day');
const amount = z.int();
const text = z.string();
const nothing = z.strictObject({});
/** The answer was told to staff, who wrote it down; absent: it was given on the customer's page. */
const told = TOLD.optional();
/** The price is for the inspection alone, and sells no repair; absent: of a repair. */
const isInspection = z.boolean().optional();
/** No price was agreed before this one; absent: it changes an agreed price. */
const isFirst = z.boolean().optional();
/** What was agreed before this price is an inspection alone, and nothing is repaired yet. */
const isAfterInspection = z.boolean().optional();

/** Papers written with this answer because the invoice issued ahead says another price; absent: no invoice was issued ahead. */
const replaced = z
  .strictObject({
    /** the invoices that were credited in full */
    credited: z.array(text),
    /** the one in their place, with the day while something is left to pay; none where nothing is owed */
    invoice: z.strictObject({ number: text, dueOn: calendarDay.optional() }).optional(),
  })
  .optional();

/** The unit was sent before, and its carrier brought the parcel back; absent: it never left. */
const isAgain = z.boolean().optional();

/** Of a claim that is looked at again. */
const openedAgain = {
  /** with tax; asked for with that ruling and not answered, so that it is off. Absent: none waited */
  askedGross: amount.optional(),
  /** they had been told that it is ready to go back */
  wasReady: z.boolean().optional(),
  /** with wasReady, the day it is promised for now; left out where that has passed */
  promisedOn: calendarDay.optional(),
};

export const factsOf = {
  'job-booked': nothing,
  'job-cancelled': z.strictObject({
    reason: text,
    /** paid already, and given back */
    refund: amount.optional(),
    /** booked at a price that was asked for; absent: from the price list, or a claim */
    isQuoted: z.boolean().optional(),
    /** of a claim: whether what it was opened for can be claimed again, on the day it was cancelled */
    claimAgain: z
      .strictObject({
        endsOn: calendarDay,
        until: calendarDay.nullable(),
        lateUntil: calendarDay.nullable(),
      })
      .optional(),
  }),
  /** a booked parcel has not come */
  'parcel-awaited': z.strictObject({
    keptUntil: calendarDay,
    /** its customer named a parcel that is on its way */
    isNamed: z.boolean().optional(),
    /** nobody is here on these days, or soon will not be; a parcel that comes then is taken in on `backOn` */
    closure: z.strictObject({ from: calendarDay, to: calendarDay, backOn: calendarDay }).optional(),
  }),
  'unit-arrived': z.strictObject({
    promisedOn: calendarDay.nullable(),
    /** of the promises before it whose day had come, how many were kept; absent where there were too few to say */
    kept: z.strictObject({ promises: z.int(), kept: z.int() }).optional(),
    differences: z.array(text),
    /** it came without a booking: no price is agreed yet; or, on a claim, before the claim was opened */
    isUnbooked: z.boolean().optional(),
    /** a job was opened for it first, and the customer told that it came without a booking */
    isFound: z.boolean().optional(),
    /** photos of how it came stand on the job page */
    hasPhotos: z.boolean().optional(),
  }),
  /** another parcel was taken in under the booking: the unit is not here */
  'arrival-undone': z.strictObject({
    /** the workshop's own words */
    reason: text,
    /** photos of that parcel stood on the job page */
    hadPhotos: z.boolean().optional(),
  }),
  'approval-asked': z.strictObject({
    revision: z.int(),
    reason: text,
    previousGross: amount,
    gross: amount,
    /** null on a claim of which something is covered: a no sends nothing back */
    returnFee: amount.nullable(),
    /** owed beside the return fee after a no, because it was agreed to before; absent: none */
    inspectionFee: amount.optional(),
    /** working days that the changed repair takes beside those promised */
    furtherDays: z.int().optional(),
    validUntil: calendarDay,
    isFirst,
    isAfterInspection,
  }),
  'offer-reminder': z.strictObject({
    revision: z.int(),
    gross: amount,
    /** null on a claim of which something is covered */
    returnFee: amount.nullable(),
    inspectionFee: amount.optional(),
    validUntil: calendarDay,
    isFirst,
    isAfterInspection,
  }),
  'offer-lapsed': z.strictObject({
    revision: z.int(),
    gross: amount,
    validUntil: calendarDay,
    isFirst,
    isAfterInspection,
  }),
  'price-taken-back': z.strictObject({
    revision: z.int(),
    gross: amount,
    /** the workshop's own words */
    reason: text,
    /** the last day that it was said to hold; absent: that day has passed */
    heldUntil: calendarDay.optional(),
    isFirst,
    isAfterInspection,
  }),
  'approval-recorded': z.strictObject({
    revision: z.int(),
    /** rest-declined: the covered part of a claim goes on without the rest */
    decision: z.enum(['accepted', 'declined', 'rest-declined']),
    gross: amount,
    /** part of the gross after a no */
    inspectionFee: amount.optional(),
    /** where the days it waited for this answer moved the promise */
    promise: z.strictObject({ from: calendarDay, to: calendarDay, reason: text }).optional(),
    /** work waits for the end of this day, while the customer may withdraw and asked for no early start */
    startAfter: calendarDay.optional(),
    /** left to pay, below zero what is given back; absent: nothing was paid or invoiced before the answer */
    balance: amount.optional(),
    replaced,
    /** this yes made the contract: what the law asks to confirm comes with it */
    isFirst: z.boolean().optional(),
    isAfterInspection,
    /** after a no: the last day on which it may still become a yes, unless the unit is packed before */
    yesUntil: calendarDay.optional(),
    /** a yes to the price that was declined as this revision */
    afterNoTo: z.int().optional(),
    told,
    /** it was told in time and written down after they had been written to that the price is no longer held */
    hadLapsed: z.boolean().optional(),
    /** with a yes: they had been told that it is ready to go back */
    wasReady: z.boolean().optional(),
    /** it waits for a part, and does so after the answer as well */
    waitsForPart: z.boolean().optional(),
  }),
  'withdrawal-recorded': z.strictObject({
    /** day and time of receipt where the workshop is, as text; the day alone of one that was told and not written */
    at: text,
    told,
    owed: amount,
    /** paid already beyond what is owed */
    refund: amount,
    isHere: z.boolean(),
    /** a contested claim waits for its ruling, and the unit with it */
    isAnswerDue: z.boolean().optional(),
    replaced,
  }),
  'repair-stopped': z.strictObject({
    why: z.enum(STOPS),
    /** the workshop's own words */
    reason: text,
    /** owed for the way back and the inspection together */
    gross: amount,
    inspectionFee: amount,
    /** paid already beyond what is owed */
    refund: amount,
    replaced,
  }),
  /** a unit that was ready is worked on again; the workshop's own words, or none */
  'work-reopened': z.strictObject({
    reason: text,
    /** the day it is promised for now; left out where that has passed */
    promisedOn: calendarDay.optional(),
    isAgain,
  }),
  'promise-moved': z.strictObject({ from: calendarDay, to: calendarDay, reason: text }),
  'unit-ready': z.strictObject({
    balance: amount,
    isAgain,
    /** its certificate was issued when it first left, and stands */
    hasCertificate: z.boolean().optional(),
    /** the customer was asked for their address and has not answered: nothing is posted before */
    asksAddress: z.boolean().optional(),
    /** the owner decided to send it back unpaid: it leaves, and what is left stays owed */
    isWaived: z.boolean().optional(),
    /** the invoice issued with it, or issued before and to be paid, its day left out once past; none where nothing is to pay */
    invoice: z.strictObject({ number: text, dueOn: calendarDay.optional() }).optional(),
  }),
  'invoice-issued': z.strictObject({ number: text, balance: amount, dueOn: calendarDay }),
  'credit-note-issued': z.strictObject({
    number: text,
    invoice: text,
    amount,
    reason: text,
    /** left to pay afterwards; below zero is given back */
    balance: amount,
  }),
  /** an amount below zero was given back, for the price or for the postage of a claim; balance is what is left to pay */
  'payment-received': z.strictObject({
    amount,
    balance: amount,
    isPostage: z.boolean().optional(),
    /** what of the postage asked for is still to be paid back; absent: nothing */
    postageLeft: amount.optional(),
    /** no price is agreed yet: what was paid counts towards it */
    isPriceOpen: z.boolean().optional(),
    /** the unit has left, or never came: no news of it is to come */
    isOver: z.boolean().optional(),
    /** it stands packed, and leaves once everything is paid */
    isReady: z.boolean().optional(),
    /** it leaves at once although something is left to pay: the owner decided so */
    isWaived: z.boolean().optional(),
  }),
  'unit-sent-back': z.strictObject({
    /** '' with its reference where the customer collected the unit */
    carrier: text,
    carrierReference: text,
    certificateNumber: text.nullable(),
    revision: z.int().nullable(),
    /** the carrier's page on this parcel, where it has one */
    tracking: z.url({ protocol: /^https$/ }).optional(),
    /** still to pay, where the owner decided to send it back all the same */
    owed: amount.optional(),
    isCollected: z.boolean().optional(),
    /** its carrier brought it back before: the certificate is the one that was issued then */
    isAgain: z.boolean().optional(),
    /** it was recorded as gone by mistake before, and the customer was told so */
    isAfterMistake: z.boolean().optional(),
    /** where the certificate covers longer than it states, for the days since it was issued */
    coveredUntil: calendarDay.optional(),
  }),
  'parcel-came-back': z.strictObject({
    /** the workshop's own words */
    reason: text,
    hasCertificate: z.boolean(),
  }),
  /** the carrier is asked where the parcel is */
  'parcel-sought': z.strictObject({
    carrier: text,
    /** the workshop's own words */
    note: text,
  }),
  'search-ended': z.strictObject({
    how: z.enum(SEARCH_ENDS),
    /** the workshop's own words; '' where there are none */
    note: text,
  }),
  /** it was recorded as gone by mistake, and is here */
  'dispatch-undone': z.strictObject({
    /** the workshop's own words */
    reason: text,
    /** absent: a carrier was said to have it */
    wasCollected: z.boolean().optional(),
    hasCertificate: z.boolean().optional(),
    /** the ruling on a claim can be contested again, since the unit is here */
    mayContest: z.boolean().optional(),
  }),
  'reference-corrected': z.strictObject({
    carrier: text,
    carrierReference: text,
    tracking: z.url({ protocol: /^https$/ }).optional(),
  }),
  'claim-opened': z.strictObject({
    claimNumber: text,
    certificateNumber: text,
    /** opened after cover had ended: a person decides whether it is let in */
    isLate: z.boolean().optional(),
    /** the serial given is only close to the certificate's */
    isSerialClose: z.boolean().optional(),
    /** its battery is damaged or in doubt: nothing is said of posting it */
    mustNotPost: z.boolean().optional(),
    /** the workshop opened it for the customer */
    byUs: z.boolean().optional(),
    /** the unit came before the claim was opened: there is nothing to post */
    isHere: z.boolean().optional(),
  }),
  'claim-ruled': z.strictObject({
    claimNumber: text,
    ruling: text,
    cause: text,
    reasonText: text,
    mayContest: z.boolean(),
    /** not covered because it came after cover had ended: whether there is a fault to repair */
    afterCover: z.enum(['fault', 'no-fault']).optional(),
    /** with tax; agreed to before this ruling, and it stands. Absent: nothing is agreed beside the cover */
    agreedGross: amount.optional(),
  }),
  /** asked for by the customer of a covered claim, and not paid; the workshop's own words */
  'postage-ended': z.strictObject({
    claimNumber: text,
    amount,
    /** what of it was paid back before; absent: nothing */
    paid: amount.optional(),
    reason: text,
  }),
  'claim-contested': z.strictObject({ claimNumber: text, text }),
  /** staff wrote down that the customer contests a ruling */
  'contest-recorded': z.strictObject({ claimNumber: text, told: TOLD, ...openedAgain }),
  /** the workshop took back its own ruling, in its own words */
  'claim-reopened': z.strictObject({
    claimNumber: text,
    reason: text,
    ...openedAgain,
    mayContest: z.boolean(),
  }),
  'message-from-workshop': z.strictObject({
    text,
    /** in the meantime the agreed work goes on, or the price is held; absent: nothing is said of it */
    goesOn: z.boolean().optional(),
  }),
  'message-from-customer': z.strictObject({
    text,
    /** so many photos came with it; absent: none */
    photos: z.int().optional(),
  }),
  'link-renewed': nothing,
  'link-copy': nothing,
  'certificate-copy': z.strictObject({
    certificateNumber: text,
    revision: z.int(),
    /** where it covers longer than it states, for days given back */
    coveredUntil: calendarDay.optional(),
  }),
  'quote-asked': nothing,
  'quote-joined': nothing,
  'quote-question': z.strictObject({ text }),
  'quote-answered': z.strictObject({ text }),
  'quote-sent': z.strictObject({
    revision: z.int(),
    gross: amount,
    validUntil: calendarDay,
    /** working days from the unit's arrival */
    workingDays: z.int(),
    isInspection,
  }),
  'quote-reminder': z.strictObject({
    revision: z.int(),
    gross: amount,
    validUntil: calendarDay,
    isInspection,
  }),
  'quote-accepted': z.strictObject({ revision: z.int(), gross: amount, isInspection }),
  /** yesUntil: the last day on which the no may still become a yes */
  'quote-declined': z.strictObject({ revision: z.int(), yesUntil: calendarDay.optional() }),
  'quote-lapsed': z.strictObject({ revision: z.int(), validUntil: calendarDay, isInspection }),
  /** a price had been sent, which ends with it */
  'quote-turned-down': z.strictObject({ text, hadPrice: z.boolean().optional() }),
  'lot-recall-lifted': z.strictObject({ part: text, lot: text, text }),
  'lot-recall': z.strictObject({
    part: text,
    lot: text,
    /** the workshop's own words: what to do and how it is put right */
    text,
  }),
  'unclaimed-notice': z.strictObject({
    notice: z.int(),
    lastDay: calendarDay,
    /** after this one the workshop decides */
    isLast: z.boolean().optional(),
    /** what the workshop says about keeping such a unit */
    storage: text.optional(),
  }),
  'unclaimed-decided': z.strictObject({
    /** what was decided, in words for the customer */
    told: text,
    note: text,
    /** where it is kept longer: until when */
    until: calendarDay.optional(),
  }),
} as const;

export type MailTemplate = keyof typeof factsOf;
export type FactsOf<T extends MailTemplate> = z.output<(typeof factsOf)[T]>;

/** One message: its template and the facts that template needs. */
export type MailContent = { [T in MailTemplate]: { template: T; data: FactsOf<T> } }[MailTemplate];

export const mailTemplates = z.object(factsOf).keyof();

/** Reads a stored template and its facts back; throws on anything that no version of the program wrote. */
export function readContent(stored: { template: string; data: unknown }): MailContent {
  const template = mailTemplates.parse(stored.template);
  // The facts were read by this very template, which the compiler cannot follow through a union.
  return { template, data: factsOf[template].parse(stored.data) } as MailContent;
}
