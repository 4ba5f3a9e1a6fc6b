import { demoId } from './demo-id';

/** [code, supplier, days before the demonstration's today it came, pieces, cost of one in pence] */
type LotSeed = readonly [
  code: string,
  supplier: string,
  daysAgo: number,
  received: number,
  unitCostMinor: number,
];
type PartSeed = {
  code: string;
  name: string;
  term: string | null;
  reorderAt: number | null;
  lots: readonly LotSeed[];
};

// Invented suppliers.
const HARBOUR = 'Harbour Components';
const LIGHTSHIP = 'Lightship Electronic Supply';
const NESBROOK = 'Nesbrook Parts';

const SEEDS: readonly PartSeed[] = [
  {
    code: 'USB-C-24',
    name: 'USB-C socket, 24 contacts, four anchors',
    term: 'P12M',
    reorderAt: 10,
    lots: [
      ['HC-25118', HARBOUR, 450, 40, 165],
      ['LS-7731', LIGHTSHIP, 220, 40, 120],
      ['HC-26044', HARBOUR, 70, 60, 172],
    ],
  },
  {
    code: 'USB-MB-5',
    name: 'Micro-USB socket, five contacts',
    term: null,
    reorderAt: 6,
    lots: [
      ['NB-0419', NESBROOK, 440, 25, 85],
      ['NB-0633', NESBROOK, 120, 25, 88],
    ],
  },
  {
    code: 'JACK-35-4',
    name: '3.5 mm socket, four contacts',
    term: 'P12M',
    reorderAt: 6,
    lots: [
      ['LS-6902', LIGHTSHIP, 440, 30, 140],
      ['LS-8120', LIGHTSHIP, 90, 30, 145],
    ],
  },
  {
    code: 'DC-21',
    name: 'Power socket 5.5/2.1 mm, switched',
    term: null,
    reorderAt: 5,
    lots: [
      ['HC-25092', HARBOUR, 450, 20, 95],
      ['HC-26031', HARBOUR, 110, 20, 98],
    ],
  },
  {
    code: 'DIN-5',
    name: 'DIN socket, five contacts, shielded',
    term: null,
    reorderAt: 4,
    lots: [['NB-0502', NESBROOK, 430, 24, 110]],
  },
  {
    code: 'CELL-10',
    name: 'Lithium cell 3.7 V 1000 mAh with protection',
    term: 'P6M',
    reorderAt: 4,
    lots: [['LS-7015', LIGHTSHIP, 400, 20, 520]],
  },
  {
    code: 'CELL-25',
    name: 'Lithium cell 3.7 V 2500 mAh with protection',
    term: 'P6M',
    reorderAt: 6,
    lots: [
      ['LS-6850', LIGHTSHIP, 450, 25, 690],
      ['NB-0588', NESBROOK, 242, 25, 540],
      ['LS-8204', LIGHTSHIP, 50, 20, 705],
    ],
  },
  {
    code: 'CELL-30',
    name: 'Lithium cell 3.7 V 3000 mAh with protection',
    term: 'P6M',
    reorderAt: 4,
    lots: [['LS-7340', LIGHTSHIP, 300, 20, 760]],
  },
  {
    code: 'CELL-40',
    name: 'Lithium cell 3.7 V 4000 mAh with protection',
    term: 'P6M',
    reorderAt: 4,
    lots: [['LS-7341', LIGHTSHIP, 300, 20, 880]],
  },
  {
    code: 'CELL-52',
    name: 'Lithium cell 3.7 V 5200 mAh with protection',
    term: 'P6M',
    reorderAt: 4,
    lots: [['LS-7342', LIGHTSHIP, 300, 20, 990]],
  },
  {
    code: 'CELL-2032',
    name: 'Button cell 3 V with holder',
    term: null,
    reorderAt: 5,
    lots: [['HC-25207', HARBOUR, 430, 30, 75]],
  },
  {
    code: 'DISP-128',
    name: 'Display 128 x 64 with ribbon cable',
    term: 'P6M',
    reorderAt: 4,
    lots: [
      ['NB-0455', NESBROOK, 440, 20, 1450],
      ['NB-0671', NESBROOK, 60, 15, 1480],
    ],
  },
  {
    code: 'DISP-LONG',
    name: 'Display 240 x 64, long',
    term: 'P6M',
    reorderAt: null,
    lots: [],
  },
  {
    code: 'SW-FOOT',
    name: 'Footswitch, three poles',
    term: 'P12M',
    reorderAt: 5,
    lots: [
      ['HC-25140', HARBOUR, 440, 25, 210],
      ['LS-7988', LIGHTSHIP, 130, 25, 185],
    ],
  },
  {
    code: 'SW-TACT',
    name: 'Push button 6 x 6 mm',
    term: null,
    reorderAt: 40,
    lots: [['NB-0477', NESBROOK, 430, 200, 9]],
  },
  {
    code: 'POT-10K',
    name: 'Control 10 kΩ, two channels, matched',
    term: null,
    reorderAt: 4,
    lots: [['HC-25175', HARBOUR, 430, 20, 340]],
  },
  {
    code: 'PAD-MAT',
    name: 'Pad mat with sensor sheet',
    term: 'P6M',
    reorderAt: 16,
    lots: [['LS-7120', LIGHTSHIP, 400, 18, 1650]],
  },
  {
    code: 'KEY-STRIP',
    name: 'Rubber contact strip, one octave',
    term: null,
    reorderAt: 12,
    lots: [['NB-0526', NESBROOK, 430, 80, 230]],
  },
  {
    code: 'INLET-C14',
    name: 'Mains socket C14 with fuse holder',
    term: 'P12M',
    reorderAt: 3,
    lots: [['HC-25181', HARBOUR, 400, 12, 260]],
  },
  {
    code: 'WIRE-01',
    name: 'Enamelled copper wire 0.1 mm, metre',
    term: null,
    reorderAt: 100,
    lots: [['HC-25033', HARBOUR, 455, 100, 6]],
  },
];

/** Parts of the demonstration with their lots; the days each lot came are counted back from the demonstration's today. */
export const DEMO_PARTS = SEEDS.map(({ lots, ...part }) => ({
  ...part,
  id: demoId('part', part.code),
  lots: lots.map(([code, supplier, daysAgo, received, unitCostMinor]) => ({
    id: demoId('lot', `${part.code}/${code}`),
    code,
    supplier,
    daysAgo,
    received,
    unitCostMinor,
  })),
}));
