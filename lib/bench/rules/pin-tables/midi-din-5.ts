import type { Pin, PinTable } from '@/lib/bench/rules/pin-table';

// Five-pin DIN of 180 degrees (DIN 45322, IEC 60130-9): the arc runs 1 4 2 5 3. Use of the pins: MIDI 1.0 Detailed Specification. From memory.
const ARC: readonly { pin: string; name: string; isUnused?: boolean }[] = [
  { pin: '1', name: 'not used', isUnused: true },
  { pin: '4', name: 'current source' },
  { pin: '2', name: 'shield' },
  { pin: '5', name: 'current sink' },
  { pin: '3', name: 'not used', isUnused: true },
];

export const midiDin5: PinTable = {
  key: 'midi-din-5',
  name: 'MIDI DIN-5',
  pins: ARC.map((pin, i): Pin => ({ ...pin, net: `pin ${pin.pin}`, row: 1, position: i + 1 })),
  isFacing: false,
  note: 'On MIDI IN pin 2 is left open on purpose, so that the shield makes no ground loop: there it has no far end.',
};
