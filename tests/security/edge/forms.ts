/** A form filled in as it should be, for every schema that something sent is read by. */
export type Form = {
  fields: Readonly<Record<string, string | readonly string[] | File>>;
  /** fields that are lists, as the action says them to parseForm */
  lists?: readonly string[];
};

const uuid = '7b1f6a52-0c0d-4f8e-9a57-3f8f0f6f2a11';
const version = { version: '3' };
const address = {
  name: 'Bryn Tolliver',
  email: 'bryn@example.net',
  phone: '+44 20 7946 0018',
  address1: '4 Sail Loft',
  address2: 'Rope Walk',
  postcode: 'QM3 4ZZ',
  town: 'Sandmouth',
  country: 'GB',
};
const said = { text: 'The tape squeals when it is warm.' };
const lines = 'One\nTwo';

const front: [file: string, forms: Record<string, Form>][] = [
  ['book/schema.ts', { startForm: { fields: { repair: uuid } } }],
  [
    'certificate/[number]/schema.ts',
    {
      askForm: { fields: { serial: 'QF-104', symptom: 'It is dead', details: 'Since Monday.' } },
      openForm: { fields: { serial: 'QF-104', symptom: 'It is dead', ...address, battery: 'healthy' } },
    },
  ],
  [
    'certificate/lost/schema.ts',
    { lostForm: { fields: { number: 'WJ7K2M4PX', serial: 'QF-104', email: 'bryn@example.net' } } },
  ],
  [
    'job/[token]/schema.ts',
    {
      decisionForm: {
        fields: { revision: '2', decision: 'accepted', start: 'yes', terms: 'yes' },
      },
      messageForm: { fields: { ...said, formKey: uuid } },
      parcelForm: { fields: { reference: 'SM 1234 5678' } },
      versionForm: { fields: version },
      contestForm: { fields: said },
    },
  ],
  [
    'quote/[token]/schema.ts',
    {
      answerForm: { fields: { ...said, formKey: uuid } },
      decisionForm: { fields: { revision: '1', decision: 'declined' } },
    },
  ],
  [
    'quote/ask/schema.ts',
    {
      askForm: {
        fields: {
          model: uuid,
          device: 'Marram Two',
          serial: 'QF-104',
          symptoms: ['It does not charge'],
          problem: 'It stops after a minute.',
          history: ['dropped'],
          name: address.name,
          email: address.email,
          phone: address.phone,
          formKey: uuid,
        },
        lists: ['symptoms', 'history', 'kept'],
      },
    },
  ],
];

const workshop: [file: string, forms: Record<string, Form>][] = [
  [
    'change-password-schema.ts',
    { changePasswordForm: { fields: { currentPassword: 'old tin kettle', newPassword: 'seven apples' } } },
  ],
  ['second-step/schema.ts', { secondStepForm: { fields: { code: '123456', goTo: '/workshop' } } }],
  [
    'sign-in/schema.ts',
    {
      signInSchema: {
        fields: { email: 'mira@example.org', password: 'seven apples', goTo: '/workshop' },
      },
    },
  ],
];

const inside: [file: string, forms: Record<string, Form>][] = [
  [
    'account/schema.ts',
    {
      passwordSchema: { fields: { password: 'seven apples' } },
      codeSchema: { fields: { code: '123 456' } },
      sessionSchema: { fields: { session: uuid } },
    },
  ],
  [
    'arrivals/[number]/schema.ts',
    {
      takeInForm: {
        fields: { ...version, serial: 'QF-104', arrived: ['Charger'], extra: 'Case, strap' },
        lists: ['arrived', 'photos', 'serialPhoto'],
      },
      walkInForm: {
        fields: {
          formKey: uuid,
          repair: uuid,
          serial: 'QF-104',
          problem: 'No letter.',
          extra: 'Case',
          battery: 'none',
          ...address,
        },
        lists: ['photos'],
      },
    },
  ],
  ['catalogue/family-schema.ts', { familySchema: { fields: { name: 'Recorders', position: '1' } } }],
  [
    'catalogue/file/schema.ts',
    {
      uploadSchema: { fields: { file: new File(['a,b'], 'catalogue.csv') } },
      importSchema: { fields: { mark: 'b1f6a52' } },
      importedCounts: { fields: { added: '1', changed: '0' } },
    },
  ],
  [
    'catalogue/model-schema.ts',
    {
      modelSchema: {
        fields: {
          familyId: uuid,
          maker: 'Marram',
          name: 'Two',
          aliases: lines,
          serialPattern: 'QF-000',
          serialRule: 'none',
          serialExample: 'QF-104',
          serialPlace: 'Under the lid',
          battery: 'lithium-ion',
          batteryWh: '9.25',
          isMainsPowered: 'yes',
          weightGrams: '480',
          lengthMm: '160',
          widthMm: '90',
          heightMm: '40',
          tariffNumber: '8519 81',
          accessories: lines,
          isListed: 'yes',
        },
      },
    },
  ],
  [
    'catalogue/pin-tables/pin-table-schema.ts',
    { pinTableSchema: { fields: { name: 'Dock', source: 'Measured', text: '1 GND\n2 5 V' } } },
  ],
  [
    'catalogue/policies/policy-schema.ts',
    {
      policySchema: {
        fields: {
          name: 'One year',
          startEvent: 'delivered',
          workTerm: 'P12M',
          partsTerm: 'P6M',
          renewedMinimum: 'P90D',
          heldRule: 'whole-days',
          rollLastDay: 'yes',
          graceDays: '7',
          transferable: 'no',
          exclusions: lines,
        },
      },
    },
  ],
  [
    'catalogue/repair-schema.ts',
    {
      repairSchema: {
        fields: {
          name: 'Socket replaced',
          summary: 'The socket is replaced.',
          price: '48.00',
          taxCategory: 'S',
          taxRate: '20',
          minutes: '45',
          workingDays: '5',
          symptoms: lines,
          policyId: uuid,
          isListed: 'yes',
        },
      },
    },
  ],
  ['catalogue/repairs/[id]/schema.ts', { partSchema: { fields: { code: 'SOC-1', quantity: '2' } } }],
  [
    'catalogue/repairs/[id]/sheet/check-schema.ts',
    {
      checkSchema: {
        fields: {
          kind: 'reading',
          label: 'Voltage at rest',
          help: 'After a minute.',
          unit: 'V',
          low: '4.75',
          high: '5.25',
          passing: lines,
          failing: 'Three',
          caution: 'hot-air',
          pinTable: uuid,
        },
      },
    },
  ],
  [
    'catalogue/repairs/[id]/sheet/schema.ts',
    {
      placeSchema: { fields: { position: '2', move: 'up' } },
      readySchema: { fields: { ready: 'mains' } },
    },
  ],
  [
    'claims/[number]/schema.ts',
    {
      carriedFields: { fields: version },
      inspectionForm: {
        fields: { item: 'outside-damage', answer: 'no', note: 'A scratch, old.' },
      },
      rulingForm: {
        fields: {
          cause: 'workmanship',
          alsoFound: 'nothing',
          evidence: 'clear',
          letIn: 'yes',
          reasonText: 'The joint was dry.',
          lesson: 'Tug each wire.',
        },
      },
      secondLookForm: { fields: { decision: 'confirm' } },
    },
  ],
  ['customers/[number]/contact/schema.ts', { contactForm: { fields: { ...version, ...address } } }],
  [
    'jobs/[number]/dispatch-schema.ts',
    {
      parcelForm: {
        fields: {
          weight: '1250',
          length: '30',
          width: '20.5',
          height: '10',
          value: '80.00',
          battery: 'fitted',
        },
      },
      dispatchForm: {
        fields: {
          weight: '1250',
          carrier: 'Harbour Post',
          carrierReference: 'HP 1',
          postage: '4.20',
          battery: 'none',
          value: '80.00',
        },
      },
    },
  ],
  [
    'jobs/[number]/keeping-schema.ts',
    {
      decisionForm: { fields: { decision: 'keep-longer', note: 'She is at sea.', until: '2026-12-24' } },
      promiseForm: { fields: { to: '2026-12-24', reason: 'The part is late.' } },
    },
  ],
  [
    'jobs/[number]/photos/[photo]/photo-marks-schema.ts',
    { photoMarksForm: { fields: { caption: 'The joint', 'column-0': 'B', 'row-0': '2', 'text-0': 'dry' } } },
  ],
  [
    'jobs/[number]/schema.ts',
    {
      carriedFields: { fields: { ...version, formKey: uuid } },
      moveForm: { fields: { move: 'assess', note: 'Now.' } },
      serialForm: { fields: { serial: 'QF-104', note: 'Read twice.' } },
      findingForm: { fields: said },
      photoForm: { fields: { purpose: 'finding' } },
      workForm: { fields: { ...said, minutes: '20' } },
      partForm: { fields: { lot: uuid, quantity: '1' } },
      paymentForm: {
        fields: { amount: '48.00', method: 'cash', reference: 'R 1', receivedOn: '2026-11-25', tell: 'no' },
      },
      messageForm: { fields: said },
      nothingForm: { fields: {} },
      offerForm: {
        fields: { reason: 'The board is cracked.', onYes: 'We go on.', onNo: 'We stop.', furtherDays: '5' },
      },
    },
  ],
  [
    'jobs/[number]/sheet/connector-form-schema.ts',
    { connectorForm: { fields: { note: 'Warm.', 'probe-1': '0.4' } } },
  ],
  [
    'jobs/[number]/wire-schema.ts',
    {
      wireForm: {
        fields: { from: 'R12', to: 'C4', length: '30', diameter: '0.1', reading: '78', unit: 'milliohm' },
      },
    },
  ],
  ['mail/schema.ts', { bounceForm: { fields: { note: '550 no such mailbox' } } }],
  [
    'money/invoices/[number]/schema.ts',
    {
      creditForm: {
        fields: { choice: 'everything', reason: 'Billed twice.', formKey: uuid },
      },
    },
  ],
  [
    'parts/lots/[id]/recall/schema.ts',
    {
      recallForm: {
        fields: {
          text: 'Please stop using the unit and send it to us at our cost.',
          letters: '4',
          formKey: uuid,
          step: 'send',
          seen: 'Please stop using the unit.',
        },
      },
    },
  ],
  [
    'parts/part-schema.ts',
    {
      partSchema: { fields: { code: 'SOC-1', name: 'Socket', term: 'P6M', reorderAt: '5' } },
      lotSchema: {
        fields: {
          code: 'L-1',
          supplier: 'Gannet Parts',
          receivedOn: '2026-11-25',
          received: '100',
          unitCost: '0.45',
        },
      },
      writeOffSchema: { fields: { quantity: '3' } },
    },
  ],
  [
    'people/schema.ts',
    {
      changeInput: {
        fields: {
          name: 'Mira Sorrel',
          email: 'mira@example.org',
          initials: 'ms',
          role: 'bench',
          isActive: 'yes',
        },
      },
      resetInput: { fields: { secondStepOff: 'yes' } },
      askedForm: { fields: { asked: 'yes', seenAt: '2026-11-25T09:00:00.000Z' } },
    },
  ],
  [
    'quotes/[number]/schema.ts',
    {
      nothingForm: { fields: {} },
      questionForm: { fields: said },
      messageForm: { fields: said },
      turnDownForm: { fields: said },
      priceForm: {
        fields: {
          repairId: uuid,
          takePrice: 'yes',
          reason: 'The head is worn.',
          proposal: 'A new head.',
          workingDays: '5',
          validDays: '30',
          note: 'Rare part.',
          customerAsked: 'yes',
          press: 'send',
        },
      },
    },
  ],
  [
    'returns/rows/narrowing.ts',
    { rowsAsked: { fields: { by: 'lot', id: uuid, month: '2026-11', only: 'returns' } } },
  ],
  [
    'settings/carriers/carrier-schema.ts',
    {
      carrierForm: {
        fields: {
          name: 'Harbour Post',
          kind: 'road',
          divisor: '5000',
          wholeSides: 'yes',
          step: '500',
          heaviest: '20',
          longest: '100',
          valueUpTo: '500.00',
          tracking: 'https://post.example.org/',
          position: '1',
          isUsed: 'yes',
        },
      },
      customsForm: {
        fields: { customsFree: 'JE, GG', seenAt: '2026-11-25T09:00:00.000Z' },
      },
    },
  ],
];

const ofLib: [file: string, forms: Record<string, Form>][] = [
  [
    'lib/jobs/rules/booking.ts',
    {
      unitAnswers: { fields: { serial: 'QF-104' } },
      problemAnswers: {
        fields: { problem: 'It stops.', history: ['liquid'] },
        lists: ['history'],
      },
      parcelAnswers: {
        fields: { accessories: ['Charger'], otherAccessory: 'Strap', battery: 'healthy', data: 'saved' },
        lists: ['accessories'],
      },
      addressAnswers: { fields: address },
      confirmAnswers: { fields: { terms: 'yes', start: 'yes' } },
    },
  ],
  [
    'lib/people/staff-input.ts',
    {
      staffInput: {
        fields: { name: 'Mira Sorrel', email: 'mira@example.org', initials: 'ms', role: 'bench' },
      },
    },
  ],
  [
    'lib/quotes/rules/request-answers.ts',
    {
      requestForm: {
        fields: { device: 'Marram Two', problem: 'It stops.', name: address.name, email: address.email },
        lists: ['symptoms', 'history'],
      },
    },
  ],
  ['lib/workshop/customs-input.ts', { customsInput: { fields: { customsFree: 'JE, GG' } } }],
  [
    'lib/workshop/keeping-input.ts',
    {
      keepingInput: {
        fields: {
          unclaimedNotices: '3',
          unclaimedAfterDays: '30',
          unclaimedEveryDays: '30',
          storageText: 'We keep it dry.',
          keepMonths: '72',
        },
      },
    },
  ],
  [
    'lib/workshop/settings-input.ts',
    {
      detailsInput: {
        fields: {
          name: 'Quay & Alder',
          tagline: 'Repairs by post',
          addressLines: lines,
          postcode: 'QM1 1ZZ',
          town: 'Sandmouth',
          country: 'GB',
          email: 'workshop@quayandalder.example.org',
          phone: '+44 20 7946 0011',
        },
      },
      daysInput: {
        fields: {
          timeZone: 'Europe/London',
          locale: 'en-GB',
          paper: 'A4',
          holidays: 'GB/ENG',
          capacityMinutesDay: '300',
        },
      },
      textsInput: {
        fields: {
          termsText: lines,
          privacyText: lines,
          paymentText: lines,
          packingText: lines,
          territory: 'UK',
        },
      },
      closingDayInput: { fields: { day: '2026-12-24', name: 'Stocktaking' } },
    },
  ],
];

const money: Form = {
  fields: {
    currency: 'GBP',
    pricesIncludeTax: 'yes',
    taxName: 'VAT',
    taxNumber: 'GB 123',
    taxExemptReason: '',
    returnFee: '8.00',
    inspectionFee: '0',
    labourRate: '40.00',
    isInspectionFeeTakenOff: 'yes',
    approvalDays: '30',
    remindDays: '5',
    dueDays: '14',
    bankHolder: 'Quay & Alder',
    // The registry's own example for the United Kingdom (ISO 13616, SWIFT IBAN registry).
    iban: 'GB29 NWBK 6016 1331 9268 19',
    bic: 'NWBKGB2L',
    payLink: '',
    withdrawalRule: 'uk',
    replacementText: lines,
  },
};

/** The form of each schema, by its file and name. */
export const edgeForms = new Map<string, Form>([
  ...flat('app/(front)/', front),
  ...flat('app/workshop/', workshop),
  ...flat('app/workshop/(inside)/', inside),
  ...flat('', ofLib),
  ['lib/workshop/money-input.ts moneyInput', money],
  ['lib/workshop/settings-input.ts moneyInput', money],
]);

function flat(folder: string, table: readonly [string, Record<string, Form>][]): [string, Form][] {
  return table.flatMap(([file, forms]) =>
    Object.entries(forms).map(([name, form]): [string, Form] => [`${folder}${file} ${name}`, form]),
  );
}
