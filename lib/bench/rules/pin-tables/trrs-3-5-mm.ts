import type { PinTable } from '@/lib/bench/rules/pin-table';

// Four-pole 3.5 mm jack, order tip to sleeve as in CTIA headsets (left, right, ground, microphone), from memory; OMTP swaps the last two.
export const trrs35: PinTable = {
  key: 'trrs-3-5-mm',
  name: '3.5 mm TRRS jack',
  pins: [
    { pin: 'T', name: 'left', net: 'left', row: 1, position: 1 },
    { pin: 'R1', name: 'right', net: 'right', row: 1, position: 2 },
    { pin: 'R2', name: 'ground', net: 'ground', row: 1, position: 3 },
    { pin: 'S', name: 'microphone', net: 'microphone', row: 1, position: 4 },
  ],
  isFacing: false,
  note: 'Probe with no plug in and again with one in: a bent spring touches its neighbour only when it is pushed aside.',
};
