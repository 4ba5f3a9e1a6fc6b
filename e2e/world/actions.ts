import type { Who } from './routes';

/** What an action is bound to: a number, an id, or nothing yet. */
export type Bound = string | number | null;

export type ActionRow = {
  /** The file under app without its groups, and the function: '/job/[token]/actions.ts decide'. */
  action: string;
  may: readonly Who[];
  /** What the page binds, in order; places in braces are filled from world/case.ts. */
  bound?: readonly Bound[];
  /** What is sent, where an empty form would be refused before anybody asks who sends it. */
  form?: Readonly<Record<string, string>>;
  /** What somebody else could hold and send in place of the first bound part, and what each of them is told. */
  strangers?: { hold: readonly string[]; told: RegExp };
  /** Does its work with nothing typed and nothing to look up, so those who may are not asked to try it. */
  acts?: true;
};

type Rest = Omit<ActionRow, 'action' | 'may'>;
type Short = readonly [name: string, may: readonly Who[], rest?: Rest];

const anyone: readonly Who[] = ['anyone'];
const all: readonly Who[] = ['front', 'bench', 'owner'];
const bench: readonly Who[] = ['bench', 'owner'];
const desk: readonly Who[] = ['front', 'owner'];
const owner: readonly Who[] = ['owner'];

const filledIn = { version: '1', text: 'Somebody else wrote this.', reference: 'FROM NOBODY' };
const yes = { ...filledIn, revision: '1', decision: 'accepted' };

const draft: Rest = {
  bound: ['{draft}'],
  strangers: { hold: ['{wrongDraft}', '{link}', '{job}'], told: /This booking was not found/ },
};
const jobLink: Rest = {
  bound: ['{link}'],
  form: filledIn,
  strangers: { hold: ['{wrongLink}', '{quoteLink}', '{job}'], told: /This link opens no job any more/ },
};
const quoteLink: Rest = {
  bound: ['{quoteLink}'],
  form: filledIn,
  strangers: { hold: ['{wrongQuoteLink}', '{link}', '{quote}'], told: /This link opens no quote any more/ },
};
const job: Rest = { bound: ['{job}'] };
const quote: Rest = { bound: ['{quote}'] };
const claim: Rest = { bound: ['{claim}'] };
const sheet: Rest = { bound: ['{repair}', 1] };

/** The plain moves of the table of stages, each the work of one kind of staff. */
const moves: readonly Short[] = [
  ...['cancel', 'close', 'take-up-again', 'pack-unrepaired', 'return-unrepaired'].map(moveBy(all)),
  ...['ask-approval', 'take-back-price'].map(moveBy(desk)),
  ...['assess', 'start-bench', 'parts-in', 'prove', 'fail-check', 'pass-checks', 'reopen-work'].map(
    moveBy(bench),
  ),
  ...['set-aside'].map(moveBy(owner)),
];

/** Every action of the app, each with who may. tests/structure/actions.test.ts refuses one that is not here. */
export const actions: readonly ActionRow[] = [
  ...inFile('/book/actions.ts', [
    ['startBooking', anyone],
    ['saveUnit', ['draft'], { ...draft, form: { serial: 'FROM-NOBODY' } }],
    ['saveProblem', ['draft'], { ...draft, form: { problem: 'From nobody.' } }],
    ['saveParcel', ['draft'], { ...draft, form: { battery: 'healthy', data: 'none' } }],
    [
      'saveAddress',
      ['draft'],
      {
        ...draft,
        form: {
          name: 'Nobody',
          email: 'nobody@example.net',
          address1: '1 Elsewhere',
          postcode: 'QM9 9ZZ',
          town: 'Sandmouth',
          country: 'GB',
        },
      },
    ],
    [
      'confirmBooking',
      ['draft'],
      {
        ...draft,
        form: {
          terms: 'yes',
          shownMinor: '7200',
          shownReturnFee: '960',
          shownCover: 'shown',
          shownTerms: 'shown',
        },
      },
    ],
  ]),
  ...inFile('/certificate/[number]/actions.ts', [
    [
      'claim',
      ['number'],
      {
        bound: ['{certificate}', 1],
        form: { phase: 'ask', serial: 'FROM-NOBODY', symptom: 'It is dead' },
        strangers: { hold: ['{wrongCertificate}', '{job}'], told: /We have no certificate with this number/ },
      },
    ],
  ]),
  ...inFile('/certificate/lost/actions.ts', [['sendAgain', anyone]]),
  ...inFile('/job/[token]/actions.ts', [
    ['decide', ['private link'], { ...jobLink, form: yes }],
    ['sayYesAfterAll', ['private link'], { ...jobLink, form: yes }],
    ['writeMessage', ['private link'], jobLink],
    ['askForPostage', ['private link'], { ...jobLink, form: { amount: '5.60', to: 'FROM NOBODY' } }],
    ['giveReference', ['private link'], jobLink],
    ['cancelBooking', ['private link'], jobLink],
    ['askForStart', ['private link'], jobLink],
    ['withdrawFromContract', ['private link'], jobLink],
    ['contest', ['private link'], jobLink],
  ]),
  ...inFile('/quote/ask/actions.ts', [['ask', anyone]]),
  ...inFile('/quote/[token]/actions.ts', [
    ['answer', ['private link'], quoteLink],
    ['decide', ['private link'], { ...quoteLink, form: yes }],
    ['sayYesAfterAll', ['private link'], { ...quoteLink, form: yes }],
    ['goOnToBook', ['private link'], quoteLink],
  ]),
  ...inFile('/workshop/sign-in/actions.ts', [
    ['signInAction', anyone, { form: { email: 'nobody@example.org', password: 'seven apples at low tide' } }],
  ]),
  ...inFile('/workshop/second-step/actions.ts', [['secondStepAction', anyone, { form: { code: '000000' } }]]),
  ...inFile('/workshop/sign-in/new-password/actions.ts', [['chooseOwnPassword', all]]),
  ...inFile('/workshop/account/actions.ts', [
    ['changeOwnPassword', all],
    ['beginSecondStepAction', all],
    ['confirmSecondStepAction', all],
    ['endSecondStepAction', all],
    ['renewBackupCodesAction', all],
    ['endSessionAction', all],
    ['endOtherSessionsAction', all, { acts: true }],
    ['signOutAction', anyone, { acts: true }],
    ['signOutEverywhereAction', all, { acts: true }],
  ]),
  ...inFile('/workshop/arrivals/new/actions.ts', [['openForParcel', all]]),
  ...inFile('/workshop/arrivals/[number]/actions.ts', [['takeIn', all, job]]),
  ...inFile('/workshop/catalogue/actions.ts', [
    ['saveFamilyAction', owner, { bound: ['{family}'] }],
    ['saveModelAction', owner, { bound: ['{model}'] }],
    ['saveRepairAction', owner, { bound: ['{model}', '{repair}'] }],
  ]),
  ...inFile('/workshop/catalogue/file/actions.ts', [
    ['uploadListAction', owner],
    ['importListAction', owner],
  ]),
  ...inFile('/workshop/catalogue/pin-tables/actions.ts', [
    ['pinTableAction', owner, { bound: [null] }],
    ['retireAction', owner, { bound: ['usb-type-c'] }],
  ]),
  ...inFile('/workshop/catalogue/policies/actions.ts', [
    ['savePolicyAction', owner, { bound: ['{policy}'] }],
    ['retirePolicyAction', owner, { bound: ['{policy}'] }],
  ]),
  ...inFile('/workshop/catalogue/repairs/[id]/actions.ts', [
    ['putPartAction', owner, { bound: ['{repair}'] }],
    ['removePartAction', owner, { bound: ['{repair}', '{part}'] }],
  ]),
  ...inFile('/workshop/catalogue/repairs/[id]/sheet/actions.ts', [
    ['addCheckAction', owner, sheet],
    ['addReadyChecksAction', owner, sheet],
    ['changeCheckAction', owner, { bound: ['{repair}', 1, 1] }],
    ['moveCheckAction', owner, { ...sheet, form: { position: '1', move: 'off' } }],
  ]),
  ...inFile('/workshop/claims/new/actions.ts', [['openForCustomer', all, { bound: ['{certificate}'] }]]),
  ...inFile('/workshop/claims/[number]/actions.ts', [
    ['answerItem', bench, claim],
    ['rule', bench, claim],
    ['decideSecondLook', owner, claim],
    ['nameLines', bench, { ...claim, form: { lines: 'work-1' } }],
    ['openAgain', owner, { ...claim, form: { reason: 'For nobody.' } }],
    ['teachCheck', bench, { bound: ['{claim}', '{repair}', 1] }],
  ]),
  ...inFile('/workshop/customers/[number]/actions.ts', [
    ['removeData', owner, { ...job, form: { cover: 'yes' } }],
  ]),
  ...inFile('/workshop/customers/[number]/contact/actions.ts', [
    ['correct', all, job],
    ['correctWhoAsked', all, quote],
  ]),
  ...inFile('/workshop/jobs/[number]/actions.ts', [
    ...moves,
    ['settle', all, job],
    ['addFinding', bench, job],
    ['addJobPhotos', all, job],
    ['addWork', bench, job],
    ['takePart', bench, job],
    ['addPayment', desk, job],
    ['endPostageAsked', desk, job],
    ['issueNow', desk, { ...job, form: filledIn }],
    ['writeToCustomer', all, job],
    ['settleWords', all, job],
    ['newLink', all, { ...job, form: filledIn }],
  ]),
  ...inFile('/workshop/jobs/[number]/bench-actions.ts', [
    ['addWire', bench, job],
    ['awaitParts', bench, job],
    ['putBack', bench, job],
    ['sayNeeded', bench, job],
    ['pieceOut', bench, job],
    ['takeBackRecorded', all, job],
    ['stopWork', all, job],
  ]),
  ...inFile('/workshop/jobs/[number]/told-actions.ts', [['writeTold', desk, job]]),
  ...inFile('/workshop/jobs/[number]/dispatch-actions.ts', [
    ['sendBack', all, job],
    ['sendBack', all, { ...job, form: { intent: 'work-out' } }],
    ['takeBack', all, job],
    ['correctReferenceAction', all, job],
  ]),
  ...inFile('/workshop/jobs/[number]/search-actions.ts', [
    ['seek', all, job],
    ['sayHowItEnded', all, job],
  ]),
  ...inFile('/workshop/jobs/[number]/undo-actions.ts', [
    ['notHere', all, job],
    ['notGone', all, job],
  ]),
  ...inFile('/workshop/jobs/[number]/keeping-actions.ts', [
    ['decideOnUnit', owner, job],
    ['moveThePromise', all, job],
    ['sendAgain', desk, { bound: ['{job}', '{mail}'] }],
  ]),
  ...inFile('/workshop/jobs/[number]/photos/[photo]/actions.ts', [
    ['describe', all, { bound: ['{job}', '{photo}'] }],
  ]),
  ...inFile('/workshop/jobs/[number]/price/actions.ts', [['writeChangedPrice', desk, job]]),
  ...inFile('/workshop/jobs/[number]/sheet/actions.ts', [
    ['enterChecks', bench, job],
    ['takeNewest', owner, job],
    ['putUnder', bench, job],
    ['proveBesideAction', bench, job],
    ['leaveBesideAction', bench, { bound: ['{job}', '0199b3a2-0000-7000-8000-0000000000ff'] }],
    ['enterConnector', bench, { bound: ['{connectorJob}', '{connectorCheck}'] }],
  ]),
  ...inFile('/workshop/mail/actions.ts', [
    ['sendAgainAction', desk, { bound: ['{mail}'] }],
    ['cameBackAction', desk, { bound: ['{mail}'], form: { note: 'Nobody lives here.' } }],
    ['toldAction', desk, { bound: ['{mail}'], form: { note: 'By telephone.' } }],
  ]),
  ...inFile('/workshop/money/invoices/[number]/actions.ts', [
    [
      'creditAction',
      desk,
      { bound: ['{invoice}'], form: { choice: 'everything', reason: 'For nobody', left: '1' } },
    ],
  ]),
  ...inFile('/workshop/parts/actions.ts', [
    ['savePartAction', bench, { bound: ['{part}'] }],
    ['addLotAction', bench, { bound: ['{part}'] }],
    ['orderPartsAction', bench],
    ['expectOrderAction', bench, { bound: ['{part}', '0199b3a2-0000-7000-8000-0000000000ff'] }],
    ['endOrderAction', bench, { bound: ['{part}', '0199b3a2-0000-7000-8000-0000000000ff'] }],
    ['correctLotAction', bench, { bound: ['{lot}'] }],
    ['addToLotAction', bench, { bound: ['{lot}'], form: { received: '1' } }],
    ['writeOffAction', bench, { bound: ['{lot}'], form: { quantity: '1' } }],
  ]),
  ...inFile('/workshop/parts/lots/[id]/recall/actions.ts', [
    ['recallAction', owner, { bound: ['{lot}'] }],
    ['stopLotAction', owner, { bound: ['{lot}'] }],
    ['liftAction', owner, { bound: ['{lot}'] }],
    ['liftQuietlyAction', owner, { bound: ['{lot}'] }],
  ]),
  ...inFile('/workshop/people/actions.ts', [
    ['addStaffAction', owner],
    ['changeStaffAction', owner, { bound: ['{person}'] }],
    ['resetPasswordAction', owner, { bound: ['{person}'] }],
    ['askForSecondStepAction', owner],
  ]),
  ...inFile('/workshop/promise/move/actions.ts', [['moveSeveral', all]]),
  ...inFile('/workshop/quotes/[number]/actions.ts', [
    ['askQuestion', all, quote],
    ['newQuoteLink', all, { ...quote, form: filledIn }],
    ['writeMessage', all, quote],
    ['settleWords', all, quote],
    ['turnDownRequest', desk, quote],
  ]),
  ...inFile('/workshop/quotes/[number]/price/actions.ts', [['writeQuote', desk, quote]]),
  ...inFile('/workshop/settings/actions.ts', [
    ['saveDetails', owner],
    ['saveMoney', owner],
    ['saveDays', owner],
    ['saveTexts', owner],
    ['saveTexts', owner, { form: { intent: 'preview' } }],
    ['saveKeeping', owner],
    ['addClosingDay', owner],
    ['removeClosingDay', owner],
  ]),
  ...inFile('/workshop/settings/carriers/actions.ts', [
    ['keepCarrier', owner, { bound: ['{carrier}'] }],
    ['keepCustomsFree', owner],
  ]),
  ...inFile('/workshop/settings/keys/actions.ts', [['changeKey', owner, { acts: true }]]),
];

function inFile(file: string, rows: readonly Short[]): ActionRow[] {
  return rows.map(([name, may, rest]) => ({ action: `${file} ${name}`, may, ...rest }));
}

function moveBy(may: readonly Who[]): (move: string) => Short {
  return (move) => ['move', may, { ...job, form: { ...filledIn, move } }];
}
