import { day } from '@/lib/calendar/day';
import type { Setting, Workshop } from '@/lib/documents/kit/page';
import { batteryVerdict } from '@/lib/parcels/rules/battery';
import { packingAdvice } from '@/lib/parcels/rules/packing';

export const setting: Setting = { paper: 'A4', locale: 'en-GB', made: new Date('2026-12-03T10:15:00Z') };

export const workshop: Workshop = {
  name: 'Quay & Alder',
  address: ['4 Ropewalk Yard', 'Sandmouth', 'QM4 7QY'],
  phone: '01632 960417',
  email: 'bench@quay-alder.example.org',
};

export const unit = { model: 'Tidewater HW-2 field recorder', serial: 'TW2-0O51-18B' };
export const customer = 'Mira Oakenfold';
export const job = 'JCE9SAWRW';
export const statusUrl = `https://quay-alder.example.org/track/${job}`;

export const verdict = batteryVerdict({
  battery: 'lithium-ion',
  wattHours: 7.4,
  packing: 'in-unit',
  condition: 'healthy',
});

export const advice = packingAdvice({
  unit: unit.model,
  jobKind: 'repair',
  sentAlong: ['Wind shield'],
  accessories: ['Wind shield', 'USB cable', 'Shoulder strap'],
  battery: 'lithium-ion',
  verdict,
  weightGrams: 420,
  isMainsPowered: false,
});

export const stamp = (label: string, on: string | null) => ({
  label,
  day: on === null ? null : day(on),
  state: on === null ? ('waiting' as const) : ('done' as const),
});
