import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { dcJack21 } from '@/lib/bench/rules/pin-tables/dc-jack-2-1-mm';
import { midiDin5 } from '@/lib/bench/rules/pin-tables/midi-din-5';
import { trrs35 } from '@/lib/bench/rules/pin-tables/trrs-3-5-mm';
import { usbMicroB } from '@/lib/bench/rules/pin-tables/usb-micro-b';
import { usbTypeC } from '@/lib/bench/rules/pin-tables/usb-type-c';
import * as sheets from './catalogue-checks';
import type { DemoPolicyKey } from './catalogue-policies';
import { demoId } from './demo-id';

type Work = {
  key: string;
  name: string;
  summary: string;
  symptoms: string[];
  policy: DemoPolicyKey;
  /** Codes of the parts the work usually takes, with the pieces of each. */
  parts: (readonly [code: string, pieces: number])[];
  /** Versions of the check sheet, the oldest first. */
  versions: CheckDraft[][];
};

const connector = (
  key: string,
  name: string,
  part: string,
  symptoms: string[],
  ...versions: CheckDraft[][]
): Work => ({
  key,
  name,
  summary: 'Old socket off, pads and traces checked and mended, new socket soldered and anchored.',
  symptoms,
  policy: 'connector-work',
  parts: [[part, 1]],
  versions,
});

const usbSymptoms = [
  'Does not charge',
  'The cable falls out or must be held',
  'The computer does not see it',
];
const soundSymptoms = ['No sound on one side', 'It crackles when the plug moves', 'No sound at all'];

const usbC = connector(
  'usb-socket',
  'USB-C socket replaced',
  'USB-C-24',
  usbSymptoms,
  sheets.firstSocketSheet(usbTypeC),
  sheets.socketSheet(usbTypeC),
);
const microB = connector(
  'usb-socket',
  'Micro-USB socket replaced',
  'USB-MB-5',
  usbSymptoms,
  sheets.socketSheet(usbMicroB),
);
const headphone = connector(
  'headphone-socket',
  'Headphone socket replaced',
  'JACK-35-4',
  soundSymptoms,
  sheets.audioSheet(trrs35),
);
const power = connector(
  'power-socket',
  'Power socket replaced',
  'DC-21',
  ['Does not start on the adapter', 'Power cuts out when the plug moves'],
  sheets.socketSheet(dcJack21),
);
const midi: Work = {
  ...connector(
    'midi-sockets',
    'MIDI sockets replaced',
    'DIN-5',
    ['Notes are not received', 'Notes are not sent', 'Notes hang'],
    sheets.socketSheet(midiDin5),
  ),
  parts: [['DIN-5', 2]],
};

const battery = (part: string, wattHours: number): Work => ({
  key: 'battery',
  name: 'Battery replaced',
  summary: 'New cell with protection board fitted, charge and shut-off tested over a full cycle.',
  symptoms: ['Runs down within an hour', 'Switches off by itself', 'Does not charge to the end'],
  policy: 'battery-and-display',
  parts: [[part, 1]],
  versions: [sheets.batterySheet(wattHours)],
});

const display: Work = {
  key: 'display',
  name: 'Display replaced',
  summary: 'New display and ribbon cable fitted, window cleaned from inside.',
  symptoms: ['Display stays dark', 'Lines or spots on the display', 'Display flickers'],
  policy: 'battery-and-display',
  parts: [['DISP-128', 1]],
  versions: [sheets.displaySheet],
};

const liquid: Work = {
  key: 'liquid',
  name: 'Cleaned after liquid',
  summary: 'Opened, shields lifted, washed, dried and tested warm. Up to three small parts are in the price.',
  symptoms: [
    'It stopped after it got wet',
    'Keys or controls do things by themselves',
    'It smells or gets warm',
  ],
  policy: 'liquid-damage',
  parts: [],
  versions: [sheets.liquidSheet],
};

const footswitch: Work = {
  key: 'footswitch',
  name: 'Footswitch replaced',
  summary: 'New switch fitted and wired, nut secured.',
  symptoms: ['The switch does nothing', 'The switch must be pressed twice', 'It clicks loudly in the sound'],
  policy: 'connector-work',
  parts: [['SW-FOOT', 1]],
  versions: [sheets.switchSheet],
};

const buttons: Work = {
  key: 'buttons',
  name: 'Buttons renewed',
  summary: 'All push buttons of the front panel replaced.',
  symptoms: ['A button does nothing', 'A button counts double'],
  policy: 'connector-work',
  parts: [['SW-TACT', 6]],
  versions: [sheets.switchSheet],
};

const controls: Work = {
  key: 'controls',
  name: 'Volume control replaced',
  summary: 'New control fitted, both channels matched.',
  symptoms: ['It crackles when turned', 'One side is louder', 'The control is loose'],
  policy: 'connector-work',
  parts: [['POT-10K', 1]],
  versions: [sheets.controlSheet],
};

const pads: Work = {
  key: 'pads',
  name: 'Pads renewed',
  summary: 'New pad mat and sensor sheet, every pad set to even strength.',
  symptoms: ['A pad does not answer', 'Pads play by themselves', 'Pads must be hit hard'],
  policy: 'battery-and-display',
  parts: [['PAD-MAT', 1]],
  versions: [sheets.keysSheet],
};

const keys: Work = {
  key: 'key-contacts',
  name: 'Key contacts renewed',
  summary: 'Keyboard taken apart and cleaned, rubber contact strips replaced.',
  symptoms: ['A key does not sound', 'A key is always loud', 'Keys stick'],
  policy: 'connector-work',
  parts: [['KEY-STRIP', 2]],
  versions: [sheets.keysSheet],
};

const clock: Work = {
  key: 'clock-cell',
  name: 'Clock battery replaced',
  summary: 'New button cell in a holder, so that the next one needs no soldering.',
  symptoms: ['Date and time are lost', 'Settings are lost overnight'],
  policy: 'battery-and-display',
  parts: [['CELL-2032', 1]],
  versions: [sheets.buttonCellSheet],
};

const mains: Work = {
  key: 'mains-supply',
  name: 'Mains supply repaired',
  summary:
    'Mains socket, fuse holder and supply board put right, then tested for electrical safety by a trained person.',
  symptoms: ['It does not switch on', 'The fuse blows', 'It hums'],
  policy: 'connector-work',
  parts: [['INLET-C14', 1]],
  versions: [sheets.mainsSheet],
};

/** Work, price in pence with tax, bench minutes, stated working days. */
type Offer = readonly [work: Work, priceMinor: number, minutes: number, workingDays: number];

const OFFERS: Record<string, readonly Offer[]> = {
  'meridian-two': [
    [usbC, 7200, 60, 5],
    [battery('CELL-25', 9.25), 5400, 40, 4],
    [display, 8800, 60, 6],
    [liquid, 9600, 110, 8],
  ],
  'meridian-four': [
    [usbC, 7800, 70, 5],
    [headphone, 6400, 55, 5],
    [battery('CELL-52', 19.24), 6800, 45, 4],
    [liquid, 11_000, 120, 8],
  ],
  gull: [
    [microB, 5800, 50, 5],
    [battery('CELL-10', 3.7), 4400, 35, 4],
    [buttons, 4600, 40, 4],
  ],
  'slipway-8': [
    [usbC, 7600, 70, 6],
    [pads, 8200, 90, 6],
    [battery('CELL-40', 14.8), 6400, 50, 5],
    [liquid, 10_200, 115, 8],
  ],
  'slipway-16': [
    [power, 5200, 45, 5],
    [pads, 11_800, 130, 8],
    [midi, 6000, 55, 5],
    [clock, 3600, 25, 3],
  ],
  minnow: [
    [headphone, 4200, 40, 4],
    [liquid, 6800, 80, 7],
  ],
  kittiwake: [
    [footswitch, 3400, 30, 4],
    [power, 3800, 35, 4],
  ],
  sprat: [
    [footswitch, 3400, 30, 4],
    [controls, 4000, 40, 4],
  ],
  cockle: [[power, 3800, 35, 4]],
  spar: [
    [headphone, 5600, 50, 5],
    [battery('CELL-30', 11.1), 5800, 45, 5],
    [usbC, 7000, 60, 5],
  ],
  bollard: [
    [mains, 9800, 100, 8],
    [controls, 6600, 55, 6],
  ],
  'keel-25': [
    [microB, 4800, 45, 5],
    [keys, 6200, 80, 6],
  ],
  'keel-49': [[keys, 8400, 110, 7]],
  'jetty-61': [
    [midi, 5600, 50, 5],
    [display, 9200, 70, 7],
  ],
};

/** One line of the demonstration's price list, with its check sheets and what it is made of. */
export const DEMO_REPAIRS = Object.entries(OFFERS).flatMap(([model, offers]) =>
  offers.map(([work, priceMinor, minutes, workingDays]) => {
    const key = `${model}/${work.key}`;
    return {
      key,
      id: demoId('repair', key),
      model,
      modelId: demoId('model', model),
      policy: work.policy,
      policyId: demoId('policy', work.policy),
      slug: work.key,
      name: work.name,
      summary: work.summary,
      priceMinor,
      taxCategory: 'S' as const,
      taxRateBps: 2000,
      minutes,
      workingDays,
      symptoms: work.symptoms,
      parts: work.parts,
      sheets: work.versions.map((checks, i) => ({
        id: demoId('sheet', `${key}/${i + 1}`),
        version: i + 1,
        checks: checks.map((check, j) => ({
          ...check,
          id: demoId('check', `${key}/${i + 1}/${j + 1}`),
          position: j + 1,
        })),
      })),
    };
  }),
);
