import type { PinTable } from '@/lib/bench/rules/pin-table';

// Barrel jack for a 5.5/2.1 mm plug with a switched sleeve contact, numbered as on most makers' drawings: common practice, no source.
export const dcJack21: PinTable = {
  key: 'dc-jack-2-1-mm',
  name: '2.1 mm DC jack',
  pins: [
    { pin: '1', name: 'centre', net: 'centre', row: 1, position: 1 },
    { pin: '2', name: 'sleeve', net: 'sleeve', row: 1, position: 2 },
    { pin: '3', name: 'switched sleeve', net: 'sleeve', row: 1, position: 3 },
  ],
  isFacing: false,
  alsoNear: [['1', '3']],
  note: 'Without a plug 2 and 3 are joined by the switch; with one they must open. Which pole is plus is printed on the unit.',
};
