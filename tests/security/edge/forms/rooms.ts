import { address, type FormsOfFiles, lines, uuid } from './form';

export const ofLib: FormsOfFiles = [
  [
    'lib/jobs/rules/address.ts',
    { addressAnswers: { fields: address }, customerAnswers: { fields: address } },
  ],
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
      parcelForm: {
        fields: { accessories: ['Charger'], otherAccessory: 'Strap', battery: 'healthy', data: 'saved' },
        lists: ['accessories'],
      },
      confirmAnswers: {
        fields: {
          terms: 'yes',
          start: 'yes',
          shownMinor: '7200',
          shownReturnFee: '960',
          shownCover: uuid,
          shownTerms: 'Tg2QkDdIzQ6cOZ7G1nLqX5sM0fWvR3yBhEaUjPx-_K8',
        },
      },
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
          parcelRemindDays: '14',
          parcelOverDays: '45',
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
          territory: 'UK',
        },
      },
      daysInput: {
        fields: {
          timeZone: 'Europe/London',
          locale: 'en-GB',
          paper: 'A4',
          holidays: 'GB/ENG',
          capacityMinutesDay: '300',
          promiseAim: '80',
          answerDays: '3',
        },
      },
      textsInput: {
        fields: {
          termsText: lines,
          privacyText: lines,
          paymentText: lines,
          packingText: lines,
        },
      },
      closingDayInput: { fields: { from: '2026-12-24', to: '2026-12-31', name: 'Stocktaking' } },
      openAgainInput: { fields: { from: '2026-12-24', to: '2026-12-31' } },
    },
  ],
];
