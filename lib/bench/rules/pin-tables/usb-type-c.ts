import type { Pin, PinTable } from '@/lib/bench/rules/pin-table';

// USB Type-C receptacle: pin names as printed in ST UM2191 and in summaries of the USB Type-C specification.
const A = ['GND', 'TX1+', 'TX1-', 'VBUS', 'CC1', 'D+', 'D-', 'SBU1', 'VBUS', 'RX2-', 'RX2+', 'GND'];
const B = ['GND', 'TX2+', 'TX2-', 'VBUS', 'CC2', 'D+', 'D-', 'SBU2', 'VBUS', 'RX1-', 'RX1+', 'GND'];

// A1 to A12 run one way, B1 to B12 the other, so that A(n) faces B(13 - n) across the tongue.
const rowA = A.map((name, i): Pin => ({ pin: `A${i + 1}`, name, net: name, row: 1, position: i + 1 }));
const rowB = B.map((name, i): Pin => ({ pin: `B${i + 1}`, name, net: name, row: 2, position: 12 - i }));

export const usbTypeC: PinTable = {
  key: 'usb-type-c',
  name: 'USB Type-C receptacle',
  pins: [...rowA, ...rowB],
  isFacing: true,
  note: 'All GND pins are one net, all VBUS pins are one net, and the two D+ and the two D- are joined on most boards.',
};
