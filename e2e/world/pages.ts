/**
 * The pages to photograph with `npm run shots`. A path may hold places that are looked up in the demonstration:
 *
 * {link:STAGE}      private link of the newest job at that stage     {link:claim}   of the newest claim
 * {job:STAGE}       number of the newest job at that stage           {job:claim}    of the newest claim
 * {certificate}     number of the newest certificate                 {code}         its code, as printed
 * {model}           a model of the price list                        {person}       a person of the workshop
 * {quoteLink:STATE} private link of the newest request in that state {quote:STATE}  its number
 */
export type PageToShow = { name: string; path: string; as: 'visitor' | 'owner' };

export const pages: PageToShow[] = [
  { name: 'front', path: '/', as: 'visitor' },
  { name: 'prices', path: '/prices', as: 'visitor' },
  { name: 'prices-model', path: '/prices/{model}', as: 'visitor' },
  { name: 'quote-ask', path: '/quote/ask', as: 'visitor' },
  { name: 'track', path: '/track', as: 'visitor' },
  { name: 'track-job', path: '/track/{job:on-bench}', as: 'visitor' },
  { name: 'quote-quoted', path: '/quote/{quoteLink:quoted}', as: 'visitor' },
  { name: 'quote-questioned', path: '/quote/{quoteLink:questioned}', as: 'visitor' },
  { name: 'quote-accepted', path: '/quote/{quoteLink:accepted}', as: 'visitor' },
  { name: 'quote-form', path: '/quote/{quoteLink:quoted}/form', as: 'visitor' },
  { name: 'job-booked', path: '/job/{link:booked}', as: 'visitor' },
  { name: 'job-awaiting-approval', path: '/job/{link:awaiting-approval}', as: 'visitor' },
  { name: 'job-on-bench', path: '/job/{link:on-bench}', as: 'visitor' },
  { name: 'job-ready', path: '/job/{link:ready}', as: 'visitor' },
  { name: 'job-sent-back', path: '/job/{link:sent-back}', as: 'visitor' },
  { name: 'job-claim', path: '/job/{link:claim}', as: 'visitor' },
  { name: 'certificate', path: '/certificate', as: 'visitor' },
  { name: 'certificate-lost', path: '/certificate/lost', as: 'visitor' },
  { name: 'certificate-number', path: '/certificate/{certificate}', as: 'visitor' },
  { name: 'terms', path: '/terms', as: 'visitor' },
  { name: 'privacy', path: '/privacy', as: 'visitor' },
  { name: 'withdrawal', path: '/withdrawal', as: 'visitor' },
  { name: 'not-found', path: '/nowhere', as: 'visitor' },
  { name: 'sign-in', path: '/workshop/sign-in', as: 'visitor' },
  { name: 'workshop', path: '/workshop', as: 'owner' },
  { name: 'workshop-quotes', path: '/workshop/quotes', as: 'owner' },
  { name: 'workshop-quote-asked', path: '/workshop/quotes/{quote:asked}', as: 'owner' },
  { name: 'workshop-quote-quoted', path: '/workshop/quotes/{quote:quoted}', as: 'owner' },
  { name: 'workshop-quote-price', path: '/workshop/quotes/{quote:asked}/price', as: 'owner' },
  { name: 'workshop-arrivals', path: '/workshop/arrivals', as: 'owner' },
  { name: 'workshop-walk-in', path: '/workshop/arrivals/new', as: 'owner' },
  { name: 'workshop-dispatch', path: '/workshop/dispatch', as: 'owner' },
  { name: 'workshop-job-ready', path: '/workshop/jobs/{job:ready}', as: 'owner' },
  { name: 'workshop-customs', path: '/workshop/jobs/{job:ready}/customs', as: 'owner' },
  { name: 'workshop-job', path: '/workshop/jobs/{job:on-bench}', as: 'owner' },
  { name: 'workshop-job-claim', path: '/workshop/jobs/{job:claim}', as: 'owner' },
  { name: 'workshop-money', path: '/workshop/money', as: 'owner' },
  { name: 'workshop-invoice', path: '/workshop/money/invoices/2026-00001', as: 'owner' },
  { name: 'workshop-statement', path: '/workshop/money/statement/{job:sent-back}', as: 'owner' },
  { name: 'workshop-settings-money', path: '/workshop/settings/money', as: 'owner' },
  { name: 'workshop-catalogue', path: '/workshop/catalogue', as: 'owner' },
  { name: 'workshop-catalogue-file', path: '/workshop/catalogue/file', as: 'owner' },
  { name: 'workshop-pin-tables', path: '/workshop/catalogue/pin-tables', as: 'owner' },
  { name: 'workshop-pin-table', path: '/workshop/catalogue/pin-tables/usb-type-c', as: 'owner' },
  { name: 'workshop-pin-table-new', path: '/workshop/catalogue/pin-tables/new', as: 'owner' },
  { name: 'workshop-parts-order', path: '/workshop/parts/order', as: 'owner' },
  { name: 'workshop-people', path: '/workshop/people', as: 'owner' },
  { name: 'workshop-person', path: '/workshop/people/{person}', as: 'owner' },
  { name: 'workshop-settings', path: '/workshop/settings', as: 'owner' },
  { name: 'workshop-carriers', path: '/workshop/settings/carriers', as: 'owner' },
  { name: 'workshop-carrier-new', path: '/workshop/settings/carriers/new', as: 'owner' },
  { name: 'workshop-mail', path: '/workshop/mail', as: 'owner' },
  { name: 'workshop-mail-samples', path: '/workshop/mail/samples', as: 'owner' },
  { name: 'workshop-account', path: '/workshop/account', as: 'owner' },
];
