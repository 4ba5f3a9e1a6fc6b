import type { StaffRole } from './people';

/**
 * Who may open a page or file. Beside the roles of staff, what somebody holds opens it, whoever they are: a number, the
 * signed code of a certificate, the address of a booking that is not finished, or the private link of a job.
 */
export type Who = 'anyone' | 'number' | 'code' | 'draft' | 'private link' | StaffRole;

export type RouteRow = {
  /** Folders under app, without their groups. */
  path: string;
  may: readonly Who[];
  /** The address as those who may would have it; places in braces are filled from world/case.ts. Absent: the path itself. */
  example?: string;
  /** What they get; 'elsewhere' for an address that only leads on. Absent: 200. */
  answer?: number | 'elsewhere';
  /** Addresses that somebody else could try, and the status that the last answer has. */
  strangers?: readonly (readonly [address: string, status: number])[];
};

const all: readonly Who[] = ['front', 'bench', 'owner'];

/** Every page and file of the app, each with who may. tests/structure/routes.test.ts refuses one that is not here. */
export const routes: readonly RouteRow[] = [
  { path: '/', may: ['anyone'] },
  { path: '/health', may: ['anyone'] },
  { path: '/ready', may: ['anyone'] },
  // Its token is no session: tests/operations asks it with and without.
  { path: '/metrics', may: ['anyone'], answer: 404 },
  { path: '/terms', may: ['anyone'] },
  { path: '/terms/[text]', may: ['anyone'], example: '/terms/{terms}', strangers: [['/terms/none', 404]] },
  { path: '/privacy', may: ['anyone'] },
  { path: '/withdrawal', may: ['anyone'] },
  { path: '/prices', may: ['anyone'] },
  { path: '/prices/[model]', may: ['anyone'], example: '/prices/{modelSlug}' },
  { path: '/book/start', may: ['anyone'], example: '/book/start?repair={repair}' },
  {
    path: '/book/[draft]/[step]',
    may: ['draft'],
    example: '/book/{draft}/confirm',
    strangers: [['/book/{wrongDraft}/confirm', 404]],
  },
  {
    path: '/book/[draft]/battery',
    may: ['draft'],
    example: '/book/{draft}/battery?answer=swollen',
    strangers: [['/book/{wrongDraft}/battery?answer=swollen', 404]],
  },
  { path: '/track', may: ['anyone'] },
  {
    path: '/track/[number]',
    may: ['number'],
    example: '/track/{job}',
    strangers: [['/track/{wrongJob}', 404]],
  },
  { path: '/certificate', may: ['anyone'] },
  { path: '/certificate/lost', may: ['anyone'] },
  { path: '/certificate/keys', may: ['anyone'] },
  {
    path: '/certificate/[number]',
    may: ['number'],
    example: '/certificate/{certificate}',
    strangers: [['/certificate/{wrongCertificate}', 404]],
  },
  { path: '/c/[token]', may: ['code'], example: '/c/{code}', strangers: [['/c/{wrongCode}', 200]] },
  {
    path: '/job/[token]',
    may: ['private link'],
    example: '/job/{link}',
    strangers: [
      ['/job/{otherLink}', 200],
      ['/job/{wrongLink}', 404],
    ],
  },
  {
    path: '/job/[token]/slip.pdf',
    may: ['private link'],
    example: '/job/{bookedLink}/slip.pdf',
    strangers: [
      ['/job/{link}/slip.pdf', 404],
      ['/job/{wrongLink}/slip.pdf', 404],
    ],
  },
  {
    path: '/job/[token]/quote.pdf',
    may: ['private link'],
    example: '/job/{link}/quote.pdf',
    strangers: [
      ['/job/{otherLink}/quote.pdf', 200],
      ['/job/{wrongLink}/quote.pdf', 404],
      ['/job/{quoteLink}/quote.pdf', 404],
    ],
  },
  {
    path: '/job/[token]/certificate.pdf',
    may: ['private link'],
    example: '/job/{link}/certificate.pdf',
    strangers: [['/job/{wrongLink}/certificate.pdf', 404]],
  },
  {
    path: '/job/[token]/invoice/[number]',
    may: ['private link'],
    example: '/job/{link}/invoice/{invoice}',
    strangers: [
      ['/job/{otherLink}/invoice/{invoice}', 404],
      ['/job/{wrongLink}/invoice/{invoice}', 404],
    ],
  },
  {
    path: '/job/[token]/receipt.pdf',
    may: ['private link'],
    example: '/job/{link}/receipt.pdf',
    strangers: [
      ['/job/{otherLink}/receipt.pdf', 200],
      ['/job/{wrongLink}/receipt.pdf', 404],
    ],
  },
  {
    path: '/job/[token]/photo/[id]',
    may: ['private link'],
    example: '/job/{link}/photo/{photo}',
    strangers: [
      ['/job/{otherLink}/photo/{photo}', 404],
      ['/job/{wrongLink}/photo/{photo}', 404],
    ],
  },
  { path: '/quote/ask', may: ['anyone'] },
  { path: '/quote/ask/added', may: ['anyone'] },
  { path: '/photo', may: ['anyone'], answer: 405 },
  {
    path: '/quote/[token]',
    may: ['private link'],
    example: '/quote/{quoteLink}',
    strangers: [
      ['/quote/{otherQuoteLink}', 200],
      ['/quote/{wrongQuoteLink}', 404],
      ['/quote/{link}', 404],
      ['/job/{quoteLink}', 404],
    ],
  },
  {
    path: '/quote/[token]/quote.pdf',
    may: ['private link'],
    example: '/quote/{quoteLink}/quote.pdf',
    strangers: [
      ['/quote/{otherQuoteLink}/quote.pdf', 404],
      ['/quote/{wrongQuoteLink}/quote.pdf', 404],
      ['/quote/{link}/quote.pdf', 404],
    ],
  },
  {
    path: '/quote/[token]/form',
    may: ['private link'],
    example: '/quote/{quoteLink}/form',
    strangers: [
      ['/quote/{otherQuoteLink}/form', 200],
      ['/quote/{wrongQuoteLink}/form', 404],
    ],
  },
  {
    path: '/quote/[token]/form.pdf',
    may: ['private link'],
    example: '/quote/{quoteLink}/form.pdf',
    strangers: [
      ['/quote/{otherQuoteLink}/form.pdf', 404],
      ['/quote/{wrongQuoteLink}/form.pdf', 404],
    ],
  },
  {
    path: '/quote/[token]/photo/[id]',
    may: ['private link'],
    example: '/quote/{quoteLink}/photo/{quotePhoto}',
    strangers: [
      ['/quote/{otherQuoteLink}/photo/{quotePhoto}', 404],
      ['/quote/{wrongQuoteLink}/photo/{quotePhoto}', 404],
      ['/quote/{quoteLink}/photo/{photo}', 404],
      ['/job/{link}/photo/{quotePhoto}', 404],
    ],
  },
  { path: '/workshop/sign-in', may: ['anyone'] },
  { path: '/workshop/second-step', may: ['anyone'] },
  { path: '/workshop/sign-in/new-password', may: all, answer: 'elsewhere' },
  { path: '/workshop', may: all },
  { path: '/workshop/session', may: all },
  { path: '/workshop/account', may: all },
  { path: '/workshop/account/second-step', may: all, answer: 'elsewhere' },
  { path: '/workshop/account/backup-codes', may: all, answer: 'elsewhere' },
  { path: '/workshop/not-yours', may: all, answer: 403 },
  { path: '/workshop/search', may: all, example: '/workshop/search?q=a' },
  { path: '/workshop/arrivals', may: all },
  { path: '/workshop/arrivals/new', may: all },
  { path: '/workshop/arrivals/labels.pdf', may: all },
  { path: '/workshop/arrivals/[number]', may: all, example: '/workshop/arrivals/{job}' },
  { path: '/workshop/quotes', may: all },
  { path: '/workshop/quotes/[number]', may: all, example: '/workshop/quotes/{quote}' },
  {
    path: '/workshop/quotes/[number]/price',
    may: ['front', 'owner'],
    example: '/workshop/quotes/{quote}/price',
  },
  { path: '/workshop/quotes/[number]/quote.pdf', may: all, example: '/workshop/quotes/{quote}/quote.pdf' },
  { path: '/workshop/quotes/[number]/form.pdf', may: all, example: '/workshop/quotes/{quote}/form.pdf' },
  { path: '/workshop/dispatch', may: all },
  {
    path: '/workshop/dispatch/hand-over',
    may: all,
    example: '/workshop/dispatch/hand-over?carrier=Sandmouth%20Post',
  },
  { path: '/workshop/jobs', may: all },
  { path: '/workshop/jobs/[number]', may: all, example: '/workshop/jobs/{job}' },
  { path: '/workshop/jobs/[number]/price', may: ['front', 'owner'], example: '/workshop/jobs/{job}/price' },
  { path: '/workshop/jobs/[number]/sheet', may: all, example: '/workshop/jobs/{job}/sheet' },
  { path: '/workshop/jobs/[number]/customs', may: all, example: '/workshop/jobs/{job}/customs' },
  { path: '/workshop/jobs/[number]/customs.pdf', may: all, example: '/workshop/jobs/{job}/customs.pdf' },
  {
    path: '/workshop/jobs/[number]/sheet/[check]',
    may: all,
    example: '/workshop/jobs/{connectorJob}/sheet/{connectorCheck}',
  },
  {
    path: '/workshop/jobs/[number]/photos/[photo]',
    may: all,
    example: '/workshop/jobs/{job}/photos/{photo}',
  },
  { path: '/workshop/jobs/[number]/label.pdf', may: all, example: '/workshop/jobs/{job}/label.pdf' },
  { path: '/workshop/jobs/[number]/receipt.pdf', may: all, example: '/workshop/jobs/{job}/receipt.pdf' },
  { path: '/workshop/jobs/[number]/quote.pdf', may: all, example: '/workshop/jobs/{job}/quote.pdf' },
  { path: '/workshop/jobs/[number]/slip.pdf', may: all, example: '/workshop/jobs/{bookedJob}/slip.pdf' },
  { path: '/workshop/certificate/[id]', may: all, example: '/workshop/certificate/{certificateFile}' },
  { path: '/workshop/photo/[id]', may: all, example: '/workshop/photo/{photo}' },
  { path: '/workshop/customers', may: all },
  { path: '/workshop/customers/[number]', may: all, example: '/workshop/customers/{job}' },
  {
    path: '/workshop/customers/[number]/contact',
    may: all,
    example: '/workshop/customers/{job}/contact',
  },
  {
    path: '/workshop/customers/[number]/data.zip',
    may: ['owner'],
    example: '/workshop/customers/{job}/data.zip',
  },
  { path: '/workshop/promise', may: all },
  { path: '/workshop/promise/move', may: all },
  { path: '/workshop/returns', may: ['bench', 'owner'] },
  { path: '/workshop/returns/rows', may: ['bench', 'owner'] },
  { path: '/workshop/returns/rows.csv', may: ['bench', 'owner'] },
  { path: '/workshop/returns/by/[grouping]', may: ['bench', 'owner'], example: '/workshop/returns/by/lot' },
  {
    path: '/workshop/returns/by/[grouping]/[id]',
    may: ['bench', 'owner'],
    example: '/workshop/returns/by/part/{part}',
  },
  {
    path: '/workshop/returns/repairs/[id]',
    may: ['bench', 'owner'],
    example: '/workshop/returns/repairs/{repair}',
  },
  { path: '/workshop/claims', may: all },
  {
    path: '/workshop/claims/new',
    may: all,
    example: '/workshop/claims/new?certificate={certificate}',
  },
  { path: '/workshop/claims/[number]', may: all, example: '/workshop/claims/{claim}' },
  { path: '/workshop/money', may: ['front', 'owner'] },
  {
    path: '/workshop/money/journal.csv',
    may: ['front', 'owner'],
    example: '/workshop/money/journal.csv?month=2026-11',
  },
  {
    path: '/workshop/money/statement/[job]',
    may: ['front', 'owner'],
    example: '/workshop/money/statement/{job}',
  },
  {
    path: '/workshop/money/invoices/[number]',
    may: all,
    example: '/workshop/money/invoices/{invoice}',
  },
  {
    path: '/workshop/money/invoices/[number]/invoice.pdf',
    may: all,
    example: '/workshop/money/invoices/{invoice}/invoice.pdf',
  },
  {
    path: '/workshop/money/invoices/[number]/invoice.xml',
    may: all,
    example: '/workshop/money/invoices/{invoice}/invoice.xml',
  },
  { path: '/workshop/parts', may: all },
  { path: '/workshop/parts/order', may: all },
  { path: '/workshop/parts/order/order.csv', may: all },
  { path: '/workshop/parts/new', may: ['bench', 'owner'] },
  { path: '/workshop/parts/[id]', may: all, example: '/workshop/parts/{part}' },
  { path: '/workshop/parts/lots/[id]', may: all, example: '/workshop/parts/lots/{lot}' },
  { path: '/workshop/parts/lots/[id]/recall', may: ['owner'], example: '/workshop/parts/lots/{lot}/recall' },
  {
    path: '/workshop/parts/lots/[id]/recall/lift',
    may: ['owner'],
    example: '/workshop/parts/lots/{lot}/recall/lift',
  },
  { path: '/workshop/catalogue', may: all },
  {
    path: '/workshop/catalogue/families/[id]',
    may: ['owner'],
    example: '/workshop/catalogue/families/{family}',
  },
  { path: '/workshop/catalogue/file', may: ['owner'] },
  { path: '/workshop/catalogue/file/catalogue.csv', may: ['owner'] },
  { path: '/workshop/catalogue/file/checks.csv', may: ['owner'] },
  { path: '/workshop/catalogue/file/policies.csv', may: ['owner'] },
  { path: '/workshop/catalogue/file/check', may: ['owner'], answer: 'elsewhere' },
  { path: '/workshop/catalogue/models/new', may: ['owner'] },
  { path: '/workshop/catalogue/models/[id]', may: all, example: '/workshop/catalogue/models/{model}' },
  { path: '/workshop/catalogue/pin-tables', may: all },
  { path: '/workshop/catalogue/pin-tables/new', may: ['owner'] },
  {
    path: '/workshop/catalogue/pin-tables/[id]',
    may: all,
    example: '/workshop/catalogue/pin-tables/usb-type-c',
  },
  { path: '/workshop/catalogue/policies', may: all },
  { path: '/workshop/catalogue/policies/new', may: ['owner'] },
  { path: '/workshop/catalogue/policies/[id]', may: all, example: '/workshop/catalogue/policies/{policy}' },
  {
    path: '/workshop/catalogue/repairs/new',
    may: ['owner'],
    example: '/workshop/catalogue/repairs/new?model={model}',
  },
  { path: '/workshop/catalogue/repairs/[id]', may: all, example: '/workshop/catalogue/repairs/{repair}' },
  {
    path: '/workshop/catalogue/repairs/[id]/sheet',
    may: all,
    example: '/workshop/catalogue/repairs/{repair}/sheet',
  },
  {
    path: '/workshop/catalogue/repairs/[id]/sheet/[position]',
    may: ['owner'],
    example: '/workshop/catalogue/repairs/{repair}/sheet/1',
  },
  { path: '/workshop/mail', may: ['front', 'owner'] },
  { path: '/workshop/mail/[id]', may: ['front', 'owner'], example: '/workshop/mail/{mail}' },
  { path: '/workshop/mail/samples', may: ['front', 'owner'] },
  { path: '/workshop/people', may: ['owner'] },
  { path: '/workshop/people/[id]', may: ['owner'], example: '/workshop/people/{person}' },
  { path: '/workshop/settings', may: ['owner'] },
  { path: '/workshop/settings/details', may: ['owner'] },
  { path: '/workshop/settings/money', may: ['owner'] },
  { path: '/workshop/settings/days', may: ['owner'] },
  { path: '/workshop/settings/texts', may: ['owner'] },
  { path: '/workshop/settings/keeping', may: ['owner'] },
  { path: '/workshop/settings/keys', may: ['owner'] },
  { path: '/workshop/settings/carriers', may: ['owner'] },
  { path: '/workshop/settings/carriers/new', may: ['owner'] },
  {
    path: '/workshop/settings/carriers/[id]',
    may: ['owner'],
    example: '/workshop/settings/carriers/{carrier}',
  },
];
