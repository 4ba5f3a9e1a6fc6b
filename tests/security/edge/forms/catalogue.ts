import { type FormsOfFiles, lines, uuid } from './form';

export const catalogue: FormsOfFiles = [
  ['catalogue/family-schema.ts', { familySchema: { fields: { name: 'Recorders', position: '1' } } }],
  [
    'catalogue/file/schema.ts',
    {
      uploadSchema: { fields: { file: new File(['a,b'], 'catalogue.csv') } },
      importSchema: { fields: { mark: 'b1f6a52' } },
      importedCounts: { fields: { file: 'checks', added: '1', changed: '0' } },
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
      retireSchema: { fields: { retire: 'yes' } },
      policySchema: {
        fields: {
          name: 'One year',
          startEvent: 'delivered',
          workTerm: '12',
          workTermUnit: 'M',
          partsTerm: '6',
          partsTermUnit: 'M',
          renewedMinimum: '90',
          renewedMinimumUnit: 'D',
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
          priceKind: 'GBP with tax',
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
    'parts/lots/[id]/recall/schema.ts',
    {
      stopLotForm: { fields: { text: 'The supplier says that the cells swell.', formKey: uuid } },
      liftQuietlyForm: { fields: { text: 'It was the lot beside it on the shelf.', recalls: uuid } },
      liftForm: {
        fields: {
          text: 'That letter was a mistake of ours. You can use your unit.',
          letters: '4',
          recalls: uuid,
          step: 'send',
          seen: 'That letter was a mistake of ours.',
        },
      },
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
      partSchema: { fields: { code: 'SOC-1', name: 'Socket', term: '6', termUnit: 'M', reorderAt: '5' } },
      lotSchema: {
        fields: {
          code: 'L-1',
          supplier: 'Gannet Parts',
          receivedOn: '2026-11-25',
          received: '100',
          unitCost: '0.45',
          order: uuid,
        },
      },
      moreOfLotSchema: { fields: { received: '10', quantity: '3', unitCost: '2.10', order: uuid } },
      expectOrderSchema: { fields: { expectedOn: '2026-12-03' } },
      endOrderSchema: { fields: { came: '4' } },
      orderSchema: {
        fields: {
          ordered: [uuid],
          [`pieces-${uuid}`]: '10',
          supplier: 'Gannet Parts',
          orderedOn: '2026-11-25',
          expectedOn: '2026-12-03',
          formKey: uuid,
        },
        lists: ['ordered'],
      },
      writeOffSchema: { fields: { inStock: '5', quantity: '3', reason: 'Bent pins' } },
      correctLotSchema: {
        fields: { code: 'L-1', supplier: 'Gannet Parts', receivedOn: '2026-11-25', unitCost: '0.45' },
      },
    },
  ],
];
