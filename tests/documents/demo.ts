import { day } from '@/lib/calendar/day';
import type { BagLabelData, LabelSetting } from '@/lib/documents/bag-label';
import type { CertificateData } from '@/lib/documents/certificate';
import type { CustomsNoteData } from '@/lib/documents/customs-note';
import type { InvoiceData } from '@/lib/documents/invoice';
import type { Setting, Workshop } from '@/lib/documents/kit/page';
import type { PackingSlipData } from '@/lib/documents/packing-slip';
import type { QuoteData } from '@/lib/documents/quote';
import type { ReceiptData } from '@/lib/documents/receipt';
import type { RepairFormData } from '@/lib/documents/repair-form';
import { invoiceTotals } from '@/lib/invoices/rules/totals';
import { waysToPay } from '@/lib/invoices/rules/ways-to-pay';
import { totals } from '@/lib/money/tax';
import { batteryVerdict } from '@/lib/parcels/rules/battery';
import { customsNote } from '@/lib/parcels/rules/customs-note';
import { packingAdvice } from '@/lib/parcels/rules/packing';
import { repairForm } from '@/lib/quotes/rules/repair-form';
import { certificateText } from '@/lib/warranty/rules/certificate-text';
import { countCover } from '@/lib/warranty/rules/cover';
import { explainCount } from '@/lib/warranty/rules/cover-sentences';
import type { CoverLine, PolicyTerms } from '@/lib/warranty/rules/terms';
import { signedBy } from '@/tests/documents/signing';

export const setting: Setting = { paper: 'A4', locale: 'en-GB', made: new Date('2026-12-03T10:15:00Z') };

export const workshop: Workshop = {
  name: 'Quay & Alder',
  address: ['4 Ropewalk Yard', 'Sandmouth', 'QM4 7QY'],
  phone: '01632 960417',
  email: 'bench@quay-alder.example.org',
};

const unit = { model: 'Tidewater HW-2 field recorder', serial: 'TW2-0O51-18B' };
const customer = 'Mira Oakenfold';
const job = 'JCE9SAWRW';
const statusUrl = `https://quay-alder.example.org/track/${job}`;

const verdict = batteryVerdict({
  battery: 'lithium-ion',
  wattHours: 7.4,
  packing: 'in-unit',
  condition: 'healthy',
});

const advice = packingAdvice({
  unit: unit.model,
  jobKind: 'repair',
  sentAlong: ['Wind shield'],
  accessories: ['Wind shield', 'USB cable', 'Shoulder strap'],
  battery: 'lithium-ion',
  verdict,
  weightGrams: 420,
  isMainsPowered: false,
});

const stamp = (label: string, on: string | null) => ({ label, day: on === null ? null : day(on) });

export const slip: PackingSlipData = {
  setting,
  workshop,
  job,
  bookedOn: day('2026-12-03'),
  statusUrl,
  unit,
  repair: 'Replace the USB socket and test charging',
  certificate: null,
  from: [customer, '17 Lantern Row', 'Otterby OT2 9LN'],
  stamps: [
    stamp('Booked', '2026-12-03'),
    stamp('Arrived', null),
    stamp('On the bench', null),
    stamp('Proved', null),
    stamp('Sent back', null),
  ],
  include: advice.include,
  leaveOut: advice.leaveOut,
  pack: advice.pack,
  outside: advice.outside,
  battery: {
    sentences: verdict.reasons,
    caution: 'Do not post it if the battery is swollen, hot, leaking, wet or recalled. Write to us first.',
  },
  next: [
    { what: 'You post the parcel', when: 'By Thursday 17 December', cost: 'Your postage to us' },
    {
      what: 'We look at it and write to you',
      when: 'Two working days after it arrives',
      cost: 'Nothing more',
    },
    {
      what: 'We repair, prove and post it back',
      when: 'By Thursday 7 January',
      cost: '£64.00 in all, postage back included',
    },
  ],
};

const terms: PolicyTerms = {
  startEvent: 'handed-to-carrier',
  workTerm: 'P12M',
  partsTerm: 'P12M',
  exclusions: [
    'Damage from a fall, a blow or liquid after the repair',
    'A unit opened by someone else after the repair, where that caused the fault',
  ],
  renewedMinimum: 'P90D',
  heldRule: 'whole-days',
  rollLastDay: true,
  graceDays: 14,
  transferable: true,
};

const calendar = { weekend: [6, 7], closed: new Map<string, string>() };

const line = (id: string, kind: CoverLine['kind'], description: string): CoverLine => ({
  id,
  kind,
  description,
  symptoms: [],
  term: 'P12M',
  startsOn: day('2026-12-12'),
  renewedUntil: null,
});

export const coverLines: readonly CoverLine[] = [
  line('socket-work', 'work', 'USB socket replaced, four pads rebuilt'),
  line('socket', 'part', 'USB Type-C socket'),
];

/** A certificate of these lines, with the text the warranty rules give for it. */
export function certificateOf(lines: readonly CoverLine[]): CertificateData {
  const number = 'W7YVSQJZ4';
  const issuedOn = day('2026-12-12');
  const counts = lines.map((one) => ({ line: one, count: countCover(one, [], terms, calendar) }));
  const text = certificateText({
    number,
    revision: 2,
    issuedOn,
    guarantor: {
      name: workshop.name,
      addressLines: [...workshop.address],
      email: workshop.email ?? '',
      phone: workshop.phone,
    },
    unit,
    lines: counts,
    terms,
    territory: 'the United Kingdom and every country we post to',
    country: 'GB',
    zoneLabel: 'London time',
    locale: setting.locale,
    claimPage: 'quay-alder.example.org/claim',
    postageToUs: 'free, we send a label',
    postageBack: 'free',
    answerWithin: '2 working days',
  });
  const payload = signedBy({
    number,
    revision: 2,
    serial: unit.serial,
    issuedOn,
    lines: counts.map(({ line: { kind, term, startsOn }, count }) => ({
      kind,
      term,
      startsOn,
      endsOn: count.end,
    })),
  });
  const ends = counts.map(({ count }) => count.end).sort();
  const claims = counts.map(({ count }) => count.lastClaimDay).sort();
  return {
    setting,
    workshop,
    number,
    revision: 2,
    replaces: 1,
    issuedOn,
    job,
    unit,
    checkUrl: `https://quay-alder.example.org/w/${payload.token}`,
    checkPage: 'quay-alder.example.org/check',
    coveredUntil: ends.at(-1) ?? issuedOn,
    lastClaimDay: claims.at(-1) ?? issuedOn,
    cover: counts.map(({ line: one, count }) => ({
      what: one.description,
      term: one.term,
      from: one.startsOn,
      until: count.end,
    })),
    counted: [...new Set(counts.map(({ count }) => `${explainCount(count, setting.locale)}.`))],
    title: text.title,
    sections: text.sections,
    stamps: [
      stamp('Booked', '2026-12-03'),
      stamp('Arrived', '2026-12-07'),
      stamp('On the bench', '2026-12-09'),
      stamp('Proved', '2026-12-11'),
      stamp('Sent back', '2026-12-12'),
    ],
    proof: {
      work: [
        'Took out the torn USB socket and cleaned the board.',
        'Rebuilt four lifted pads with 0.1 mm enamelled wire and fixed them with resin.',
        'Fitted a new socket, both anchors soldered through.',
        'Cleaned, charged for two hours and recorded for 30 minutes.',
      ],
      parts: [
        { name: 'USB Type-C socket, 16 pins, mid-mount', quantity: 1, lot: 'HB-2611-04' },
        { name: 'Enamelled copper wire, 0.1 mm', quantity: 1, lot: 'WR-0093' },
      ],
      wires: [{ what: 'pad A6 to resistor R12, 30 mm of 0.1 mm wire', milliohms: 78, expected: 85.9 }],
      connectors: [
        {
          name: 'USB Type-C receptacle: every pin and neighbouring pair',
          lines: ['24 pins through, 29 of 30 pairs open', 'A4 VBUS and A5 CC1 read joined'],
          result: 'fail',
          on: day('2026-12-10'),
          by: 'MR',
        },
        {
          name: 'USB Type-C receptacle: every pin and neighbouring pair',
          lines: ['24 pins through, 30 pairs open'],
          result: 'pass',
          on: day('2026-12-11'),
          by: 'MR',
        },
      ],
      checkSheet: { name: 'USB socket', version: 3 },
      readings: [
        {
          name: 'Neighbouring pins open',
          reading: '22 of 22',
          unit: '',
          limits: 'all open',
          result: 'pass',
          on: day('2026-12-10'),
          by: 'MR',
        },
        {
          name: 'Jumper wire, pad A6',
          reading: '0.31',
          unit: 'Ω',
          limits: '0 to 0.25 Ω',
          result: 'fail',
          on: day('2026-12-10'),
          by: 'MR',
        },
        {
          name: 'Jumper wire, pad A6',
          reading: '0.09',
          unit: 'Ω',
          limits: '0 to 0.25 Ω',
          result: 'pass',
          on: day('2026-12-11'),
          by: 'MR',
        },
        {
          name: 'Charging current',
          reading: '0.92',
          unit: 'A',
          limits: '0.80 to 1.10 A',
          result: 'pass',
          on: day('2026-12-11'),
          by: 'MR',
        },
        {
          name: 'Voltage at the battery, charged',
          reading: '4.19',
          unit: 'V',
          limits: '4.15 to 4.22 V',
          result: 'pass',
          on: day('2026-12-11'),
          by: 'MR',
        },
        {
          name: 'Solder fill of the anchors',
          reading: '90',
          unit: '%',
          limits: '75 % or more',
          result: 'pass',
          on: day('2026-12-11'),
          by: 'MR',
        },
        {
          name: 'Records 30 minutes from the battery',
          reading: 'yes',
          unit: '',
          limits: 'yes',
          result: 'pass',
          on: day('2026-12-11'),
          by: 'JS',
        },
      ],
      technician: { initials: 'MR', provedOn: day('2026-12-11') },
    },
    payload,
  };
}

export const certificate: CertificateData = certificateOf(coverLines);

const vat = { category: 'S', rateBps: 2000 } as const;
const priced = [
  {
    description: 'Inspection, taken off below when the repair goes ahead',
    quantity: '',
    amount: 1800,
    ...vat,
  },
  { description: 'Replace the USB socket', quantity: '', amount: 6400, ...vat },
  { description: 'Rebuild four lifted pads', quantity: '1.5 h', amount: 5400, ...vat },
  { description: 'USB Type-C socket', quantity: '1', amount: 480, ...vat },
  { description: 'Inspection fee taken off', quantity: '', amount: -1800, ...vat },
  { description: 'Postage back, tracked', quantity: '', amount: 780, ...vat },
];

const price = {
  currency: 'GBP',
  mode: 'gross' as const,
  lines: priced.map(({ description, quantity, amount }) => ({ description, quantity, amount })),
  totals: totals(priced, 'gross'),
  taxName: 'VAT',
  taxNumber: 'GB 000 0000 00',
  taxNotes: [],
};

export const quote: QuoteData = {
  setting,
  workshop,
  number: 'Q9ZQV600A',
  revision: 2,
  job,
  customer,
  unit,
  issuedOn: day('2026-12-08'),
  validUntil: day('2027-01-07'),
  answerUrl: 'https://quay-alder.example.org/q/7tR2mKcVx9LhYpWb',
  stamps: [
    stamp('Quote sent', '2026-12-08'),
    stamp('Your answer', null),
    stamp('On the bench', null),
    stamp('Sent back', null),
  ],
  found: [
    'The USB socket is torn off on one side. Four pads came away with it, so the new socket has nothing to hold on to until they are rebuilt.',
    'The charging circuit behind it is sound: we measured it with a bench supply. Nothing else was damaged.',
  ],
  proposed: [
    'Rebuild the four pads with fine wire and fit a new socket, both anchors soldered through.',
    'It takes 8 working days from the day the unit arrives.',
  ],
  price,
  before: { revision: 1, gross: 7180 },
  ifYes: [
    'We order nothing you have to wait for: the socket is here.',
    'We repair, prove and send your recorder back by Thursday 7 January.',
    'You pay £130.60 before it leaves, and it comes with a certificate for 12 months.',
  ],
  ifNo: [
    'We put the recorder together again and send it back unrepaired within three working days.',
    'You pay the return fee of £9.00, and nothing else.',
  ],
  outcome: null,
};

export const form: RepairFormData = {
  setting,
  workshop,
  number: 'Q9ZQV600A',
  revision: 1,
  customer,
  unit,
  providedOn: day('2026-12-08'),
  validUntil: day('2027-01-07'),
  answerUrl: quote.answerUrl,
  fields: repairForm({
    locale: setting.locale,
    repairer: {
      name: workshop.name,
      address: workshop.address,
      phone: workshop.phone ?? '',
      email: workshop.email ?? '',
      online: 'https://quay-alder.example.org',
    },
    good: { device: unit.model, serial: unit.serial },
    defect: quote.found[0] ?? '',
    proposal: quote.proposed[0] ?? '',
    price: { gross: price.totals.gross, currency: 'GBP', taxName: 'VAT', isInspectionOnly: false },
    workingDays: 8,
    replacementText: '',
    ancillary: [{ description: 'Postage back, tracked', gross: 780 }],
    inspectionFee: { amount: 1800, isTakenOff: true },
    providedOn: day('2026-12-08'),
    validUntil: day('2027-01-07'),
    note: 'Recordings on the internal memory stay where they are.',
  }),
};

export const receipt: ReceiptData = {
  setting,
  workshop,
  job,
  invoice: '2026-0148',
  customer,
  unit,
  statusUrl,
  stamps: [
    stamp('Booked', '2026-12-03'),
    stamp('Arrived', '2026-12-07'),
    stamp('Proved', '2026-12-11'),
    stamp('Paid', '2026-12-11'),
    stamp('Sent back', null),
  ],
  price,
  credited: 0,
  payments: [{ amount: 13060, on: day('2026-12-11'), method: 'Bank transfer', reference: 'J-CE9S-AWRW' }],
  next: [
    'We post your recorder on the next working day and send you the tracking number.',
    'The certificate comes with it and by e-mail. It costs nothing more.',
  ],
};

const workshopParty = {
  name: workshop.name,
  addressLines: ['4 Ropewalk Yard'],
  postcode: 'QM4 7QY',
  town: 'Sandmouth',
  country: 'GB',
  email: 'bench@quay-alder.example.org',
};

const invoiced = invoiceTotals(
  [
    { description: 'USB-C socket replaced and anchored', amount: 9600, category: 'S', rateBps: 2000 },
    { description: 'Two traces laid again with enamelled wire', amount: 4055, category: 'S', rateBps: 2000 },
    { description: 'Off for waiting two days longer', amount: -595, category: 'S', rateBps: 2000 },
    { description: 'Postage back, exempt', amount: 640, category: 'E', rateBps: 0 },
  ] as const,
  true,
);

export const invoice: InvoiceData = {
  setting,
  workshop,
  isGross: true,
  job,
  unit,
  statusUrl,
  paper: {
    kind: 'invoice',
    number: '2026-00148',
    corrects: null,
    reason: '',
    currency: 'EUR',
    issuedOn: day('2026-12-11'),
    suppliedOn: day('2026-12-11'),
    dueOn: day('2026-12-25'),
    seller: {
      ...workshopParty,
      phone: '01632 960417',
      taxNumber: 'GB 000 0000 00',
      taxName: 'VAT',
      taxExemptReason: 'Universal postal service, exempt.',
      bankHolder: 'Quay & Alder',
      iban: 'DE71110220330123456789',
      bic: 'BHBLDEHHXXX',
    },
    buyer: {
      ...workshopParty,
      name: customer,
      addressLines: ['12 Chandler Row', 'Flat 3'],
      postcode: 'QM2 7HB',
      email: 'mira.oakenfold@example.org',
    },
    prepaid: 2000,
    ...invoiced,
  },
  ways: waysToPay(
    {
      name: workshop.name,
      bankHolder: 'Quay & Alder',
      iban: 'DE71110220330123456789',
      bic: 'BHBLDEHHXXX',
      payLink: 'https://pay.example.org/quay/{reference}?sum={amount}&in={currency}',
      paymentText: 'We post your unit on the next working day after your payment is here.',
    },
    { amount: invoiced.payable - 2000, currency: 'EUR', reference: '2026-00148' },
  ),
};

export const creditNote: InvoiceData = {
  ...invoice,
  paper: {
    ...invoice.paper,
    kind: 'credit-note',
    number: '2026-00151',
    corrects: { number: '2026-00148', issuedOn: day('2026-12-11') },
    reason: 'The socket we fitted was not the one we agreed on.',
    prepaid: 0,
  },
  ways: null,
};

export const label: BagLabelData = { job, code: statusUrl, ...unit };

export const labelSetting: LabelSetting = {
  workshop: workshop.name,
  locale: setting.locale,
  made: setting.made,
};

export const customs: CustomsNoteData = {
  setting,
  workshop,
  job,
  jobUrl: `https://quay-alder.example.org/workshop/jobs/${job}`,
  unit,
  note: customsNote({
    sender: {
      name: workshop.name,
      address: workshop.address,
      country: 'United Kingdom (GB)',
      phone: '01632 960417',
      email: 'bench@quay-alder.example.org',
    },
    receiver: {
      name: customer,
      address: ['Marktgasse 3', '9470 Buchs'],
      country: 'Switzerland (CH)',
      phone: '',
      email: 'mira@example.org',
    },
    unit: unit.model,
    family: 'Field recorders',
    serial: unit.serial,
    isRepaired: true,
    isClaim: false,
    unitGrams: 420,
    parcelGrams: 980,
    valueMinor: 24_000,
    repairMinor: 13_060,
    currency: 'GBP',
    tariffNumber: '8519.81',
    battery: { kind: 'lithium-ion', wattHours: 7.4, packed: 'fitted' },
    reference: 'J-CE9S-AWRW',
    invoice: '2026-0148',
  }),
};
