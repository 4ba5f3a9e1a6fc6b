import { address, type FormsOfFiles, said, uuid } from './form';

export const front: FormsOfFiles = [
  ['book/schema.ts', { startForm: { fields: { repair: uuid } } }],
  [
    'certificate/[number]/schema.ts',
    {
      askForm: { fields: { serial: 'QF-104', symptom: 'It is dead', details: 'Since Monday.' } },
      openForm: {
        fields: { serial: 'QF-104', symptom: 'It is dead', ...address, battery: 'healthy', data: 'saved' },
      },
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
      afterNoForm: { fields: { revision: '2', start: 'yes', terms: 'yes' } },
      messageForm: { fields: { ...said, formKey: uuid } },
      parcelForm: { fields: { reference: 'SM 1234 5678' } },
      pressForm: { fields: {} },
      withdrawForm: { fields: { shownOwed: '1800' } },
      postageForm: { fields: { amount: '5.60', to: 'Maren Holt, by bank transfer' } },
      contestForm: { fields: said },
    },
  ],
  [
    'quote/[token]/schema.ts',
    {
      answerForm: { fields: { ...said, formKey: uuid } },
      decisionForm: { fields: { revision: '1', decision: 'declined' } },
      afterNoForm: { fields: { revision: '1' } },
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
