import type { MailTemplate } from './content';

/** What each kind of message is called in the workshop. */
export const TEMPLATE_WORDS: Record<MailTemplate, string> = {
  'job-booked': 'Booked',
  'job-cancelled': 'Cancelled',
  'parcel-awaited': 'Parcel awaited',
  'unit-arrived': 'Unit arrived',
  'arrival-undone': 'Not here after all',
  'approval-asked': 'Approval asked',
  'offer-reminder': 'Approval, reminder',
  'offer-lapsed': 'Price lapsed',
  'price-taken-back': 'Price taken back',
  'approval-recorded': 'Approval recorded',
  'withdrawal-recorded': 'Withdrawal recorded',
  'repair-stopped': 'Goes back unrepaired',
  'work-reopened': 'Back on the bench',
  'promise-moved': 'Promise moved',
  'unit-ready': 'Unit ready',
  'invoice-issued': 'Invoice',
  'credit-note-issued': 'Credit note',
  'payment-received': 'Payment received',
  'unit-sent-back': 'Unit sent back',
  'parcel-came-back': 'Parcel came back',
  'parcel-sought': 'Parcel looked for',
  'search-ended': 'Parcel found or lost',
  'dispatch-undone': 'Not left after all',
  'reference-corrected': 'Reference corrected',
  'claim-opened': 'Claim opened',
  'claim-ruled': 'Claim ruled',
  'postage-ended': 'Postage not paid back',
  'claim-contested': 'Claim contested',
  'contest-recorded': 'Contest written down',
  'claim-reopened': 'Ruling looked at again',
  'message-from-workshop': 'Message to the customer',
  'message-from-customer': 'Message from the customer',
  'link-renewed': 'Private link renewed',
  'link-copy': 'Private link sent again',
  'certificate-copy': 'Certificate sent again',
  'quote-asked': 'Price asked for',
  'quote-joined': 'Added to a request',
  'quote-question': 'Question about a request',
  'quote-answered': 'Answer about a request',
  'quote-sent': 'Price sent',
  'quote-reminder': 'Price lapses soon',
  'quote-accepted': 'Price accepted',
  'quote-declined': 'Price declined',
  'quote-lapsed': 'Price lapsed',
  'quote-turned-down': 'Request turned down',
  'lot-recall': 'Letter about a lot',
  'lot-recall-lifted': 'Letter about a lot taken back',
  'unclaimed-notice': 'Unclaimed notice',
  'unclaimed-decided': 'Unclaimed, decided',
};

/** The name of a stored template, or the stored word itself when this version does not know it. */
export function templateWords(template: string): string {
  return isTemplate(template) ? TEMPLATE_WORDS[template] : template;
}

function isTemplate(template: string): template is MailTemplate {
  return template in TEMPLATE_WORDS;
}

/** Messages that tell the workshop what its customer did; every other one goes to the customer. */
const TO_WORKSHOP: ReadonlySet<string> = new Set<MailTemplate>([
  'message-from-customer',
  'claim-contested',
  'quote-answered',
]);

/** Whether a kind of message goes to the workshop's own address. */
export function isToWorkshop(template: string): boolean {
  return TO_WORKSHOP.has(template);
}
