import type { Pin, PinTable } from '@/lib/bench/rules/pin-table';

// USB Micro-B receptacle, pins 1 to 5 in one row: Universal Serial Bus Micro-USB Cables and Connectors Specification, from memory.
const NAMES = ['VBUS', 'D-', 'D+', 'ID', 'GND'];

export const usbMicroB: PinTable = {
  key: 'usb-micro-b',
  name: 'USB Micro-B',
  pins: NAMES.map((name, i): Pin => ({ pin: String(i + 1), name, net: name, row: 1, position: i + 1 })),
  isFacing: false,
  note: 'ID is open in a unit that is only ever a device; then it has no far end, and the drawing of the board decides.',
};
