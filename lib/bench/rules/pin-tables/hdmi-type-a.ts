import type { Pin, PinTable } from '@/lib/bench/rules/pin-table';

// HDMI type A: four independent published pinouts agree. They differ on the sign of HEAC at 14 and 19; taken as in HDMI 1.4, from memory.
const NAMES = [
  'D2+',
  'D2 shield',
  'D2-',
  'D1+',
  'D1 shield',
  'D1-',
  'D0+',
  'D0 shield',
  'D0-',
  'CK+',
  'CK shield',
  'CK-',
  'CEC',
  'Utility / HEAC+',
  'SCL',
  'SDA',
  'DDC/CEC/HEAC ground',
  '+5 V',
  'HPD / HEAC-',
];
const GROUNDS = new Set(['2', '5', '8', '11', '17']);

// The tails stand in one row of 19 on the board, though the contacts alternate between the two sides of the mating face.
export const hdmiTypeA: PinTable = {
  key: 'hdmi-type-a',
  name: 'HDMI type A',
  pins: NAMES.map((name, i): Pin => {
    const pin = String(i + 1);
    return { pin, name, net: GROUNDS.has(pin) ? 'ground' : name, row: 1, position: i + 1 };
  }),
  isFacing: false,
  note: 'In diode mode the four shields and pin 17 read alike, and each pair of data lines reads alike.',
};
