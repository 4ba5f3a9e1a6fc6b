import type { PinTable } from '@/lib/bench/rules/pin-table';
import { dcJack21 } from './dc-jack-2-1-mm';
import { hdmiTypeA } from './hdmi-type-a';
import { midiDin5 } from './midi-din-5';
import { trrs35 } from './trrs-3-5-mm';
import { usbMicroB } from './usb-micro-b';
import { usbTypeC } from './usb-type-c';

export const PIN_TABLES: readonly PinTable[] = [usbTypeC, usbMicroB, hdmiTypeA, midiDin5, trrs35, dcJack21];

export function findPinTable(key: string): PinTable | null {
  return PIN_TABLES.find((table) => table.key === key) ?? null;
}
