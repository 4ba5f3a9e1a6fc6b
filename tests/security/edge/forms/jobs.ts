import { address, type FormsOfFiles, said, uuid, version } from './form';

export const jobs: FormsOfFiles = [
  [
    'settle-schema.ts',
    { settleForm: { fields: { message: uuid, how: 'answered-otherwise', note: 'By telephone.' } } },
  ],
  [
    'arrivals/[number]/schema.ts',
    {
      takeInForm: {
        fields: {
          ...version,
          serial: 'QF-104',
          arrived: ['Charger'],
          extra: 'Case, strap',
          opened: 'J4K7QX290',
          openedVersion: '2',
        },
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
          isOther: 'yes',
          ...address,
        },
        lists: ['photos'],
      },
    },
  ],
  [
    'claims/new/schema.ts',
    {
      deskClaimForm: {
        fields: {
          serial: 'QF-104',
          symptom: 'other',
          details: 'It hums.',
          where: 'here',
          extra: 'Case',
          battery: 'none',
          data: 'not-asked',
          reason: 'One day over, and known for years.',
          ...address,
        },
        lists: ['photos'],
      },
    },
  ],
  [
    'claims/[number]/schema.ts',
    {
      carriedForm: { fields: version },
      inspectionForm: {
        fields: { item: 'outside-damage', answer: 'no', note: 'A scratch, old.' },
      },
      rulingForm: {
        fields: {
          cause: 'workmanship',
          alsoFound: 'nothing',
          evidence: 'clear',
          letIn: 'yes',
          mayTell: 'yes',
          reasonText: 'The joint was dry.',
          lesson: 'Tug each wire.',
        },
      },
      renewalForm: { fields: { lines: ['work-1', 'part-1'] }, lists: ['lines'] },
      lookAgainForm: { fields: { reason: 'It failed in its last test.' } },
      secondLookForm: { fields: { decision: 'confirm' } },
    },
  ],
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
      cameBackForm: { fields: { reason: 'Nobody was at home.' } },
      referenceForm: { fields: { carrierReference: 'HP 1' } },
      dispatchForm: {
        fields: {
          by: 'carrier',
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
    'jobs/[number]/search-schema.ts',
    {
      seekForm: { fields: { note: 'They search their depot.' } },
      searchEndForm: { fields: { how: 'lost', note: 'We pay for it.' } },
    },
  ],
  ['jobs/[number]/undo-schema.ts', { undoForm: { fields: { reason: 'The job above was meant.' } } }],
  [
    'jobs/[number]/keeping-schema.ts',
    {
      decisionForm: {
        fields: {
          decision: 'keep-longer',
          note: 'She is at sea.',
          until: '2026-12-24',
          isToldOtherwise: 'yes',
        },
      },
      promiseForm: { fields: { to: '2026-12-24', reason: 'The part is late.' } },
    },
  ],
  [
    'jobs/[number]/photos/[photo]/photo-marks-schema.ts',
    { photoMarksForm: { fields: { caption: 'The joint', 'column-0': 'B', 'row-0': '2', 'text-0': 'dry' } } },
  ],
  [
    'jobs/[number]/told-schema.ts',
    {
      toldForm: {
        fields: {
          answer: 'accepted',
          how: 'telephone',
          on: '2026-11-25',
          words: 'Yes, go ahead.',
          revision: '2',
          shownOwed: '1800',
          seen: uuid,
        },
      },
    },
  ],
  [
    'jobs/[number]/schema.ts',
    {
      carriedForm: { fields: { ...version, formKey: uuid } },
      moveForm: { fields: { move: 'assess', note: 'Now.' } },
      serialForm: { fields: { serial: 'QF-104', note: 'Read twice.' } },
      findingForm: { fields: said },
      photoForm: { fields: { purpose: 'finding' } },
      workForm: { fields: { ...said, minutes: '20' } },
      partForm: { fields: { lot: uuid, quantity: '1' } },
      putBackForm: { fields: { use: uuid } },
      neededForm: { fields: { part: uuid, needed: 'no' } },
      pieceOutForm: { fields: { use: uuid } },
      underRepairForm: { fields: { repair: uuid } },
      besideForm: { fields: { beside: uuid } },
      newestSheetForm: { fields: { sheet: '2' } },
      takeBackForm: { fields: { entry: `work:${uuid}`, reason: 'It is of another job.' } },
      waitForm: {
        fields: {
          'part-1': uuid,
          'pieces-1': '2',
          'part-2': uuid,
          'pieces-2': '1',
          'part-3': uuid,
          'pieces-3': '1',
          other: 'Long display',
          expectedOn: '2026-12-03',
        },
      },
      stopForm: { fields: { why: 'cannot-repair', reason: 'The chip is no longer made.' } },
      paymentForm: {
        fields: {
          amount: '48.00',
          method: 'cash',
          reference: 'R 1',
          receivedOn: '2026-11-25',
          tell: 'no',
          owed: '4800',
          payments: '1',
        },
      },
      messageForm: { fields: { ...said, seen: uuid } },
      postageEndForm: { fields: { reason: 'They want none.' } },
      nothingForm: { fields: {} },
      offerForm: {
        fields: {
          repair: uuid,
          reason: 'The board is cracked.',
          onYes: 'We go on.',
          onNo: 'We stop.',
          furtherDays: '5',
          customerAsked: 'yes',
        },
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
];
