import { z } from 'zod';
import { showNumber } from '@/lib/numbers/job-number';
import { isUnchecked } from '@/lib/parcels/rules/reference';
import { piecesWords } from './awaited-parts';
import { SEARCH_END_WORDS, SEARCH_ENDS } from './parcel-search';
import { SETTLED_BY, SETTLED_WORDS } from './settled';
import { STOP_WORDS, STOPS } from './stop';
import { TOLD, toldLine } from './told';
import { DECISION_WORDS, DECISIONS } from './unclaimed';

/**
 * Everything that can happen to a job, one payload shape per kind. Rows of job_event hold these for good;
 * a stored shape is never edited in place.
 */
export const EVENT_DATA = {
  booked: z.object({
    accessories: z.array(z.string()),
    quoteNumber: z.string(),
    /** opened by staff for a parcel that came without a booking */
    isWalkIn: z.boolean().optional(),
  }),
  moved: z.object({ move: z.string(), note: z.string().default('') }),
  'unit-arrived': z.object({
    serial: z.string(),
    comparison: z.enum(['same', 'likely-misread', 'different']),
    differences: z.array(z.string()),
    photos: z.number().int(),
    /** the job that was opened first, as if the parcel had come without a booking */
    openedAs: z.string().optional(),
  }),
  /** opened for a parcel without a booking by mistake: the parcel is that of this one, and was taken in there */
  'is-of-booking': z.object({ booking: z.string() }),
  /** it was taken in under the wrong booking */
  'arrival-undone': z.object({
    reason: z.string(),
    /** of the photos that went with it */
    sha256: z.array(z.string()).optional(),
  }),
  'serial-settled': z.object({
    serial: z.string(),
    note: z.string(),
    /** as it was kept until then; absent where that was not written down */
    before: z.string().optional(),
  }),
  'finding-recorded': z.object({ findingId: z.string() }),
  'photo-added': z.object({ photoId: z.string(), purpose: z.string() }),
  'work-recorded': z.object({ workId: z.string(), minutes: z.number().int() }),
  'part-used': z.object({
    partUseId: z.string(),
    part: z.string(),
    lot: z.string(),
    quantity: z.number().int(),
  }),
  'part-put-back': z.object({
    partUseId: z.string(),
    part: z.string(),
    lot: z.string(),
    quantity: z.number().int(),
  }),
  /** its repair usually takes it, or it waited for it: it does neither any more, and is not ordered for; and the way back */
  'part-not-needed': z.object({ partId: z.string(), part: z.string() }),
  'part-needed': z.object({ partId: z.string(), part: z.string() }),
  'wire-recorded': z.object({ wireId: z.string(), from: z.string(), to: z.string() }),
  'photo-described': z.object({ photoId: z.string(), marks: z.number().int() }),
  'lot-recalled': z.object({
    recallId: z.string(),
    part: z.string(),
    lot: z.string(),
    /** the unit was with us: nobody was written to, and the part has to come out */
    isHere: z.boolean().optional(),
  }),
  /** the recall was a mistake */
  'lot-recall-lifted': z.object({
    part: z.string(),
    lot: z.string(),
    /** the customer had been written to, and was again */
    isTold: z.boolean(),
  }),
  /** out of a unit that had left with it */
  'recalled-part-out': z.object({ partUseId: z.string(), part: z.string(), lot: z.string() }),
  'check-recorded': z.object({ entryId: z.string(), check: z.string(), isPassed: z.boolean() }),
  'offer-written': z.object({
    revision: z.number().int(),
    gross: z.number().int(),
    /** the customer asked for the change, while a price that they were told was still held */
    customerAsked: z.boolean().optional(),
  }),
  'offer-decided': z.object({
    revision: z.number().int(),
    decision: z.enum(['accepted', 'declined']),
    /** a yes to the price that the customer had declined as this revision */
    afterNoTo: z.number().int().optional(),
    /** given some other way than on the customer's page */
    told: TOLD.optional(),
  }),
  'offer-lapsed': z.object({ revision: z.number().int() }),
  'payment-recorded': z.object({
    paymentId: z.string(),
    amount: z.number().int(),
    /** the customer's postage of a covered claim, beside the price */
    isPostage: z.literal(true).optional(),
  }),
  'invoice-issued': z.object({ number: z.string(), payable: z.number().int() }),
  'credit-note-issued': z.object({ number: z.string(), invoice: z.string(), payable: z.number().int() }),
  'message-sent': z.object({ messageId: z.string(), author: z.enum(['customer', 'staff']) }),
  'message-settled': z.object({ messageId: z.string(), how: z.enum(SETTLED_BY) }),
  'sent-back': z.object({
    /** '' with its reference where the customer collected the unit */
    carrier: z.string(),
    reference: z.string(),
    certificate: z.string().nullable(),
    isCollected: z.boolean().optional(),
    /** what the parcel cost of a claim, minor units; absent: nothing, or not kept */
    postage: z.number().int().optional(),
  }),
  /** the carrier is asked where the parcel is */
  'parcel-sought': z.object({ note: z.string() }),
  'search-ended': z.object({ how: z.enum(SEARCH_ENDS), note: z.string() }),
  /** it was recorded as gone by mistake */
  'dispatch-undone': z.object({
    /** as it was recorded; '' where the customer was said to have collected it */
    carrier: z.string(),
    reference: z.string(),
    reason: z.string(),
  }),
  /** the carrier brought the parcel back undelivered */
  'came-back': z.object({ carrier: z.string(), reference: z.string(), reason: z.string() }),
  'reference-corrected': z.object({ reference: z.string() }),
  'claim-opened': z.object({
    claim: z.string(),
    certificate: z.string(),
    /** the owner's, for one that was opened after the days of grace */
    reason: z.string().optional(),
  }),
  'claim-inspected': z.object({ claim: z.string(), item: z.string(), answer: z.string() }),
  'claim-ruled': z.object({
    claim: z.string(),
    cause: z.string(),
    ruling: z.string(),
    isFinal: z.boolean(),
    isLetIn: z.boolean().optional(),
  }),
  'claim-second-look': z.object({ claim: z.string(), isConfirmed: z.boolean() }),
  'claim-contested': z.object({
    claim: z.string(),
    /** said some other way than on the customer's page */
    told: TOLD.optional(),
  }),
  /** the owner took back a ruling that the customer had been told */
  'claim-reopened': z.object({ claim: z.string(), reason: z.string() }),
  /** what of the certificate was done again, in the words of its lines; where none is named a part alone was */
  'renewal-named': z.object({ claim: z.string(), lines: z.array(z.string()) }),
  /** the customer's own postage of a covered claim, minor units */
  'postage-asked': z.object({ claim: z.string(), amount: z.number().int() }),
  /** without a payment */
  'postage-ended': z.object({ claim: z.string(), reason: z.string() }),
  'check-taught': z.object({
    claim: z.string(),
    check: z.string(),
    version: z.number().int(),
    /** of another repair than the job's own, which the unit was proved on beside it */
    repair: z.string().optional(),
  }),
  /** the job went over to a newer version of its check sheet */
  'sheet-renewed': z.object({ from: z.number().int(), to: z.number().int() }),
  /** the job was put under another repair of the catalogue, and on that one's check sheet */
  'repair-changed': z.object({
    from: z.string(),
    /** names the one before had earlier, which an agreed price may bear */
    formerly: z.array(z.string()),
    /** bench minutes that the one before was planned with; absent where it was changed before this was kept */
    minutesBefore: z.number().int().optional(),
    to: z.string(),
    /** version of the sheet it is proved on now */
    sheet: z.number().int(),
    /** where it turned out to be another model */
    unit: z.string().optional(),
  }),
  /** the unit passes the check sheet of another repair as well, since that one is done beside the job's own */
  'sheet-beside-added': z.object({ repair: z.string(), sheet: z.number().int() }),
  'sheet-beside-removed': z.object({ repair: z.string() }),
  /** recorded by mistake: it counts no more and is shown to staff alone; of a photo its hash is all that stays */
  'entry-taken-back': z.object({
    what: z.enum(['finding', 'work', 'wire', 'photo']),
    id: z.string(),
    reason: z.string(),
    /** of work */
    minutes: z.number().int().optional(),
    /** of a photo, or of those that went with their finding */
    sha256: z.array(z.string()).optional(),
  }),
  /** for which parts the job waits, as they were called then, and until when; null where nobody knew */
  'parts-awaited': z.object({
    parts: z.array(z.object({ part: z.string(), quantity: z.number().int() })),
    expectedOn: z.string().nullable(),
  }),
  'promise-moved': z.object({ from: z.string().nullable(), to: z.string(), reason: z.string() }),
  'start-requested': z.object({}),
  withdrawn: z.object({ owed: z.number().int(), told: TOLD.optional() }),
  'repair-stopped': z.object({ why: z.enum(STOPS), reason: z.string(), owed: z.number().int() }),
  'link-renewed': z.object({}),
  'parcel-named': z.object({ reference: z.string() }),
  'parcel-unnamed': z.object({}),
  /** that no parcel has come */
  'parcel-reminded': z.object({}),
  /** the parcel that goes back, as it is packed; what nobody has said is null */
  'parcel-packed': z.object({
    grams: z.number().int().nullable(),
    sides: z.array(z.number().int()).length(3).nullable(),
    valueMinor: z.number().int().nullable(),
    battery: z.string(),
  }),
  'unclaimed-notice': z.object({ notice: z.number().int(), lastDay: z.string() }),
  'unclaimed-decided': z.object({
    decision: z.enum(DECISIONS),
    note: z.string(),
    /** where it is kept longer */
    until: z.string().nullable(),
  }),
  'data-removed': z.object({}),
  'contact-corrected': z.object({}),
} satisfies Record<string, z.ZodType>;

export type EventKind = keyof typeof EVENT_DATA;
export type JobEventData = {
  [K in EventKind]: { kind: K; data: z.input<(typeof EVENT_DATA)[K]> };
}[EventKind];

export function isEventKind(text: string): text is EventKind {
  return text in EVENT_DATA;
}

/** What each kind says of itself. */
const LINES: { [K in EventKind]: (data: z.output<(typeof EVENT_DATA)[K]>) => string } = {
  booked: ({ isWalkIn }) => (isWalkIn ? 'Opened for a parcel without a booking' : 'Booked'),
  moved: ({ note }) => (note === '' ? 'Moved on' : note),
  'unit-arrived': ({ comparison, differences, openedAs }) =>
    `Taken in; serial ${SERIAL_WORDS[comparison]}${differenceWords(differences)}${openedAs === undefined ? '' : `; opened first as ${showNumber(openedAs)}`}`,
  'is-of-booking': ({ booking }) => `The parcel of a booking, ${showNumber(booking)}: taken in there`,
  'arrival-undone': ({ reason }) => `Not here after all: ${reason}`,
  'serial-settled': ({ serial }) => `Serial settled as ${serial}`,
  'finding-recorded': () => 'Finding recorded',
  'photo-added': () => 'Photo added',
  'work-recorded': ({ minutes }) => `Work recorded, ${minutes} minutes`,
  'part-used': ({ quantity, part, lot }) => `Part used: ${quantity} × ${part}, lot ${lot}`,
  'part-put-back': ({ quantity, part, lot }) => `Part put back: ${quantity} × ${part}, lot ${lot}`,
  'part-not-needed': ({ part }) => `Not needed: ${part}`,
  'part-needed': ({ part }) => `Needed after all: ${part}`,
  'wire-recorded': ({ from, to }) => `Jumper wire: ${from} to ${to}`,
  'photo-described': ({ marks }) =>
    marks === 0 ? 'Photo described' : `Photo described, ${markWords(marks)}`,
  'lot-recalled': ({ isHere, part, lot }) =>
    isHere ? `Recalled, and fitted here: ${part}, lot ${lot}` : `Letter sent about ${part}, lot ${lot}`,
  'lot-recall-lifted': ({ isTold, part, lot }) =>
    `${isTold ? 'Letter sent that the recall was a mistake' : 'No longer recalled'}: ${part}, lot ${lot}`,
  'recalled-part-out': ({ part, lot }) => `Out of the unit: ${part}, lot ${lot}`,
  'check-recorded': ({ isPassed, check }) => `${isPassed ? 'Passed' : 'Failed'}: ${check}`,
  'offer-written': ({ revision, customerAsked }) =>
    `Changed price written (revision ${revision})${customerAsked ? ', for a change the customer asked for' : ''}`,
  'offer-decided': ({ decision, revision, afterNoTo, told }) =>
    `Changed price ${decision} (revision ${revision})${afterNoTo === undefined ? '' : `, after the no to revision ${afterNoTo}`}${toldLine(told)}`,
  'offer-lapsed': ({ revision }) => `Changed price lapsed without an answer (revision ${revision})`,
  'payment-recorded': ({ isPostage, amount }) => {
    if (isPostage) return amount < 0 ? 'Postage paid back' : 'Postage entry corrected';
    return amount < 0 ? 'Money given back' : 'Payment recorded';
  },
  'invoice-issued': ({ number }) => `Invoice ${number} issued`,
  'credit-note-issued': ({ number, invoice }) => `Credit note ${number} issued on invoice ${invoice}`,
  'message-sent': ({ author }) =>
    author === 'customer' ? 'Message from the customer' : 'Message to the customer',
  'message-settled': ({ how }) => SETTLED_WORDS[how],
  'sent-back': ({ isCollected, carrier, reference }) =>
    isCollected ? 'Collected by the customer' : `Handed to ${carrier}${uncheckedWords(reference)}`,
  'parcel-sought': ({ note }) => `Parcel looked for: ${note}`,
  'search-ended': ({ how, note }) => {
    const { label } = SEARCH_END_WORDS[how];
    return note === '' ? label : `${label}: ${note}`;
  },
  'dispatch-undone': ({ reason }) => `Not gone after all: ${reason}`,
  'came-back': ({ carrier, reason }) => `Came back from ${carrier}: ${reason}`,
  // Empty once the data of the person was removed.
  'reference-corrected': ({ reference }) =>
    reference === ''
      ? 'Carrier’s reference corrected'
      : `Carrier’s reference corrected to ${reference}${uncheckedWords(reference)}`,
  'claim-opened': ({ reason }) =>
    reason === undefined
      ? 'Claim opened on the certificate'
      : `Claim opened after cover had ended: ${reason}`,
  'claim-inspected': () => 'Inspection answered',
  'claim-ruled': ({ isFinal, ruling }) =>
    isFinal ? `Claim ruled: ${ruling}` : 'Claim ruled; waits for a second look',
  'claim-second-look': ({ isConfirmed }) =>
    isConfirmed ? 'Ruling confirmed on second look' : 'Ruling sent back on second look',
  'claim-contested': ({ told }) => `Ruling contested by the customer${toldLine(told)}`,
  'claim-reopened': ({ reason }) => `Ruling looked at again: ${reason}`,
  'renewal-named': ({ lines }) =>
    lines.length === 0
      ? 'Done again: nothing but the parts that were fitted'
      : `Done again: ${lines.join('; ')}`,
  'postage-asked': () => 'The customer asked for their postage back',
  'postage-ended': ({ reason }) => `Postage not paid back: ${reason}`,
  'check-taught': ({ version, repair, check }) =>
    `Put on version ${version} of the check sheet${repair === undefined ? '' : ` of “${repair}”`}: ${check}`,
  'sheet-renewed': ({ to, from }) => `Proved on version ${to} of the check sheet instead of version ${from}`,
  'repair-changed': ({ to, from, unit }) =>
    `Put under “${to}” instead of “${from}”${unit === undefined ? '' : `, as a ${unit}`}`,
  'sheet-beside-added': ({ sheet, repair }) =>
    `Proved on version ${sheet} of the check sheet of “${repair}” as well`,
  'sheet-beside-removed': ({ repair }) => `No longer proved on the check sheet of “${repair}” as well`,
  'entry-taken-back': ({ what, minutes, reason }) =>
    `${ENTRY_WORDS[what]}${minutes === undefined ? '' : ` of ${minutes} minutes`} taken back: ${reason}`,
  'parts-awaited': ({ parts }) =>
    `Waits for ${parts.map(({ part, quantity }) => piecesWords({ name: part, quantity })).join(', ')}`,
  'promise-moved': ({ reason }) => `Promise moved: ${reason}`,
  'start-requested': () => 'The customer asked for work to start before the right to withdraw ends',
  withdrawn: ({ told }) => `The customer withdrew from the contract${toldLine(told)}`,
  'repair-stopped': ({ why, reason }) => `Goes back unrepaired. ${STOP_WORDS[why].label}: ${reason}`,
  'link-renewed': () => 'Private link renewed',
  // Empty once the data of the person was removed.
  'parcel-named': ({ reference }) =>
    reference === ''
      ? 'Parcel posted by the customer'
      : `Parcel posted by the customer: ${reference}${uncheckedWords(reference)}`,
  'parcel-unnamed': () => 'The number of the parcel was taken off again by the customer',
  'parcel-reminded': () => 'Reminded that the parcel has not come',
  'parcel-packed': ({ grams }) => (grams === null ? 'Parcel packed' : `Parcel packed, ${grams} g`),
  'unclaimed-notice': ({ notice }) => `Notice ${notice} that the unit waits`,
  'unclaimed-decided': ({ decision, note }) => `${DECISION_WORDS[decision].label}: ${note}`,
  'contact-corrected': () => 'The customer’s contact was corrected',
  'data-removed': () => 'The customer’s data was removed',
};

/**
 * One line of a job's history in plain words. Ids stay out of it; names are shown by the screen.
 *
 * eventLine('work-recorded', { workId: '…', minutes: 25 }) -> 'Work recorded, 25 minutes'
 */
export function eventLine(kind: string, data: unknown): string {
  return isEventKind(kind) ? lineOf(kind, data) : kind;
}

function lineOf<K extends EventKind>(kind: K, data: unknown): string {
  // The kind picks schema and line, so the pair belongs together; the compiler cannot follow that through the index.
  return LINES[kind](EVENT_DATA[kind].parse(data) as z.output<(typeof EVENT_DATA)[K]>);
}

type StoredEvent = { [K in EventKind]: { kind: K; data: z.output<(typeof EVENT_DATA)[K]> } }[EventKind];

/** Reads a stored payload back by its kind; throws where a row does not fit its kind. */
export function parseEvent(kind: EventKind, data: unknown): StoredEvent {
  // The kind picks the schema, so the pair belongs together; the compiler cannot follow that through the index.
  return { kind, data: EVENT_DATA[kind].parse(data) } as StoredEvent;
}

const SERIAL_WORDS = {
  same: 'matches',
  'likely-misread': 'looks misread',
  different: 'differs',
} as const;

const ENTRY_WORDS = {
  finding: 'Finding',
  work: 'Work',
  wire: 'Jumper wire',
  photo: 'Photo',
} as const;

/** No check digit of a carrier's own form is known here, and whoever looks for a parcel by such a number should know that. */
function uncheckedWords(reference: string): string {
  return isUnchecked(reference) ? ' (number not checked)' : '';
}

function markWords(marks: number): string {
  return marks === 1 ? 'one place marked' : `${marks} places marked`;
}

function differenceWords(differences: readonly string[]): string {
  return differences.length === 0 ? '' : `; ${differences.join('; ')}`;
}
