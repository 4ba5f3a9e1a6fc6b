import type { FactsOf, MailTemplate } from '@/lib/mail/rules/content';
import { approvalAsked } from './approval-asked';
import { approvalRecorded } from './approval-recorded';
import { arrivalUndone } from './arrival-undone';
import { certificateCopy } from './certificate-copy';
import { claimContested } from './claim-contested';
import { claimOpened } from './claim-opened';
import { claimReopened } from './claim-reopened';
import { claimRuled } from './claim-ruled';
import { contestRecorded } from './contest-recorded';
import { creditNoteIssued } from './credit-note-issued';
import { dispatchUndone } from './dispatch-undone';
import { invoiceIssued } from './invoice-issued';
import { jobBooked } from './job-booked';
import { jobCancelled } from './job-cancelled';
import type { Letter, Setting, Writer } from './letter';
import { linkCopy } from './link-copy';
import { linkRenewed } from './link-renewed';
import { lotRecall } from './lot-recall';
import { lotRecallLifted } from './lot-recall-lifted';
import { messageFromCustomer } from './message-from-customer';
import { messageFromWorkshop } from './message-from-workshop';
import { offerLapsed } from './offer-lapsed';
import { offerReminder } from './offer-reminder';
import { parcelAwaited } from './parcel-awaited';
import { parcelCameBack } from './parcel-came-back';
import { parcelSought } from './parcel-sought';
import { paymentReceived } from './payment-received';
import { postageEnded } from './postage-ended';
import { priceTakenBack } from './price-taken-back';
import { promiseMoved } from './promise-moved';
import { quoteAccepted } from './quote-accepted';
import { quoteAnswered } from './quote-answered';
import { quoteAsked } from './quote-asked';
import { quoteDeclined } from './quote-declined';
import { quoteJoined } from './quote-joined';
import { quoteLapsed } from './quote-lapsed';
import { quoteQuestion } from './quote-question';
import { quoteReminder } from './quote-reminder';
import { quoteSent } from './quote-sent';
import { quoteTurnedDown } from './quote-turned-down';
import { referenceCorrected } from './reference-corrected';
import { repairStopped } from './repair-stopped';
import { searchEnded } from './search-ended';
import { unclaimedDecided } from './unclaimed-decided';
import { unclaimedNotice } from './unclaimed-notice';
import { unitArrived } from './unit-arrived';
import { unitReady } from './unit-ready';
import { unitSentBack } from './unit-sent-back';
import { withdrawalRecorded } from './withdrawal-recorded';
import { workReopened } from './work-reopened';

const writers: { [T in MailTemplate]: Writer<T> } = {
  'job-booked': jobBooked,
  'job-cancelled': jobCancelled,
  'unit-arrived': unitArrived,
  'arrival-undone': arrivalUndone,
  'approval-asked': approvalAsked,
  'offer-reminder': offerReminder,
  'offer-lapsed': offerLapsed,
  'price-taken-back': priceTakenBack,
  'approval-recorded': approvalRecorded,
  'withdrawal-recorded': withdrawalRecorded,
  'repair-stopped': repairStopped,
  'work-reopened': workReopened,
  'promise-moved': promiseMoved,
  'unit-ready': unitReady,
  'invoice-issued': invoiceIssued,
  'credit-note-issued': creditNoteIssued,
  'payment-received': paymentReceived,
  'unit-sent-back': unitSentBack,
  'parcel-awaited': parcelAwaited,
  'parcel-came-back': parcelCameBack,
  'parcel-sought': parcelSought,
  'search-ended': searchEnded,
  'dispatch-undone': dispatchUndone,
  'reference-corrected': referenceCorrected,
  'claim-opened': claimOpened,
  'claim-ruled': claimRuled,
  'postage-ended': postageEnded,
  'claim-contested': claimContested,
  'contest-recorded': contestRecorded,
  'claim-reopened': claimReopened,
  'message-from-workshop': messageFromWorkshop,
  'message-from-customer': messageFromCustomer,
  'link-renewed': linkRenewed,
  'link-copy': linkCopy,
  'certificate-copy': certificateCopy,
  'quote-asked': quoteAsked,
  'quote-joined': quoteJoined,
  'quote-question': quoteQuestion,
  'quote-answered': quoteAnswered,
  'quote-sent': quoteSent,
  'quote-reminder': quoteReminder,
  'quote-accepted': quoteAccepted,
  'quote-declined': quoteDeclined,
  'quote-lapsed': quoteLapsed,
  'quote-turned-down': quoteTurnedDown,
  'lot-recall': lotRecall,
  'lot-recall-lifted': lotRecallLifted,
  'unclaimed-notice': unclaimedNotice,
  'unclaimed-decided': unclaimedDecided,
};

/** The letter of a template, written from its facts and the setting. */
export function writeLetter<T extends MailTemplate>(
  content: { template: T; data: FactsOf<T> },
  setting: Setting,
): Letter {
  return writers[content.template](content.data, setting);
}
