import { address, type FormsOfFiles, said, uuid, version } from './form';

export const office: FormsOfFiles = [
  [
    'account/schema.ts',
    {
      passwordSchema: { fields: { password: 'seven apples' } },
      codeSchema: { fields: { code: '123 456' } },
      sessionSchema: { fields: { session: uuid } },
    },
  ],
  ['customers/[number]/schema.ts', { removalForm: { fields: { cover: 'yes' } } }],
  [
    'customers/[number]/contact/schema.ts',
    {
      contactForm: { fields: { ...version, ...address } },
      askerForm: {
        fields: { ...version, name: address.name, email: address.email, phone: address.phone },
      },
    },
  ],
  [
    'mail/schema.ts',
    {
      bounceForm: { fields: { note: '550 no such mailbox' } },
      toldForm: { fields: { note: 'By telephone' } },
    },
  ],
  [
    'money/invoices/[number]/schema.ts',
    {
      creditForm: {
        fields: { choice: 'everything', reason: 'Billed twice.', left: '4800', formKey: uuid },
      },
    },
  ],
  [
    'promise/move/moves-schema.ts',
    {
      promisesForm: {
        fields: {
          reason: 'We are closed for stocktaking.',
          'move-J4K7QX290': 'yes',
          'to-J4K7QX290': '2027-01-05',
          'version-J4K7QX290': '3',
        },
      },
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
      carrierSchema: {
        fields: {
          name: 'Harbour Post',
          kind: 'road',
          divisor: '5000',
          wholeSides: 'yes',
          step: '500',
          heaviest: '20',
          longest: '100',
          valueUpTo: '500.00',
          daysHome: '5',
          daysAbroad: '20',
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
