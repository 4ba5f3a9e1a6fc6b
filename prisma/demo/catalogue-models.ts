import type { SerialRule } from '@/lib/numbers/serial';
import type { BatteryKind } from '@/lib/parcels/rules/battery';
import { demoId } from './demo-id';

/** Families, makers and models of the demonstration. All invented. */
export const DEMO_FAMILIES = [
  { key: 'field-recorders', name: 'Field recorders' },
  { key: 'groove-boxes', name: 'Groove boxes' },
  { key: 'effect-pedals', name: 'Effect pedals' },
  { key: 'headphone-amplifiers', name: 'Headphone amplifiers' },
  { key: 'keyboard-controllers', name: 'Keyboard controllers' },
].map((family, i) => ({ ...family, id: demoId('family', family.key), slug: family.key, position: i + 1 }));

type ModelSeed = {
  key: string;
  family: string;
  maker: string;
  name: string;
  aliases: string[];
  serial: { pattern: string; rule?: SerialRule; example: string; place: string };
  battery?: { kind: BatteryKind; wh: number | null };
  isMainsPowered?: boolean;
  weightGrams: number;
  /** Length, width and height in millimetres. */
  size: readonly [number, number, number];
  accessories: string[];
};

const lithium = (wh: number) => ({ kind: 'lithium-ion' as const, wh });

const SEEDS: readonly ModelSeed[] = [
  {
    key: 'meridian-two',
    family: 'field-recorders',
    maker: 'Tideline',
    name: 'Meridian Two',
    aliases: ['Meridian 2', 'M2', 'TM-2'],
    serial: { pattern: 'M2\\d{5}[A-Z]', example: 'M2-04518-K', place: 'On the plate inside the battery lid' },
    battery: lithium(9.25),
    weightGrams: 310,
    size: [158, 74, 31],
    accessories: ['USB cable', 'Wind shield', 'Carry pouch'],
  },
  {
    key: 'meridian-four',
    family: 'field-recorders',
    maker: 'Tideline',
    name: 'Meridian Four',
    aliases: ['Meridian 4', 'M4', 'TM-4'],
    serial: {
      pattern: 'M4\\d{5}[A-Z]',
      example: 'M4-10277-C',
      place: 'On the plate underneath, beside the tripod thread',
    },
    battery: lithium(19.24),
    weightGrams: 540,
    size: [196, 112, 48],
    accessories: ['USB cable', 'Wind shield', 'Shoulder strap', 'Wall adapter'],
  },
  {
    key: 'gull',
    family: 'field-recorders',
    maker: 'Tideline',
    name: 'Gull',
    aliases: ['Gull pocket recorder', 'TG-1'],
    serial: { pattern: 'G\\d{6}', example: 'G-118 402', place: 'Under the belt clip' },
    battery: lithium(3.7),
    weightGrams: 120,
    size: [96, 52, 21],
    accessories: ['USB cable', 'Belt clip'],
  },
  {
    key: 'slipway-8',
    family: 'groove-boxes',
    maker: 'Skerrin',
    name: 'Slipway 8',
    aliases: ['Slipway Eight', 'SW8'],
    serial: {
      pattern: '\\d{10}',
      rule: 'luhn',
      example: '2604118733',
      place: 'On the label underneath, below the bar code',
    },
    battery: lithium(14.8),
    weightGrams: 1250,
    size: [290, 180, 52],
    accessories: ['USB cable', 'Wall adapter', 'Lid'],
  },
  {
    key: 'slipway-16',
    family: 'groove-boxes',
    maker: 'Skerrin',
    name: 'Slipway 16',
    aliases: ['Slipway Sixteen', 'SW16'],
    serial: {
      pattern: '\\d{10}',
      rule: 'luhn',
      example: '2610450922',
      place: 'On the label underneath, below the bar code',
    },
    battery: { kind: 'button-cell', wh: null },
    weightGrams: 2400,
    size: [410, 245, 68],
    accessories: ['Wall adapter', 'Rack ears'],
  },
  {
    key: 'minnow',
    family: 'groove-boxes',
    maker: 'Skerrin',
    name: 'Minnow',
    aliases: ['Skerrin Mini', 'MN1'],
    serial: { pattern: 'MN\\d{6}', example: 'MN 400 817', place: 'Inside the battery bay' },
    weightGrams: 280,
    size: [168, 92, 28],
    accessories: ['Carry pouch'],
  },
  {
    key: 'kittiwake',
    family: 'effect-pedals',
    maker: 'Ostrel',
    name: 'Kittiwake overdrive',
    aliases: ['Kittiwake', 'OK1'],
    serial: { pattern: 'OK\\d{4}', example: 'OK-2291', place: 'On the back plate' },
    weightGrams: 390,
    size: [118, 72, 56],
    accessories: ['Wall adapter', 'Rubber feet'],
  },
  {
    key: 'sprat',
    family: 'effect-pedals',
    maker: 'Ostrel',
    name: 'Sprat delay',
    aliases: ['Sprat', 'OS1'],
    serial: { pattern: 'OS\\d{4}', example: 'OS-0873', place: 'On the back plate' },
    weightGrams: 420,
    size: [118, 72, 56],
    accessories: ['Wall adapter', 'Rubber feet'],
  },
  {
    key: 'cockle',
    family: 'effect-pedals',
    maker: 'Ostrel',
    name: 'Cockle reverb',
    aliases: ['Cockle', 'OC1'],
    serial: { pattern: 'OC\\d{4}', example: 'OC-1456', place: 'On the back plate' },
    weightGrams: 450,
    size: [122, 76, 56],
    accessories: ['Wall adapter', 'Rubber feet'],
  },
  {
    key: 'spar',
    family: 'headphone-amplifiers',
    maker: 'Halmar',
    name: 'Spar',
    aliases: ['Spar portable amplifier', 'HS-1'],
    serial: {
      pattern: '[0-9A-Z]{9}',
      rule: 'mod-37-2',
      example: 'HS26K041S',
      place: 'Beside the volume wheel, very small',
    },
    battery: lithium(11.1),
    weightGrams: 180,
    size: [112, 64, 19],
    accessories: ['USB cable', 'Leather sleeve'],
  },
  {
    key: 'bollard',
    family: 'headphone-amplifiers',
    maker: 'Halmar',
    name: 'Bollard',
    aliases: ['Bollard desk amplifier', 'HB-1'],
    serial: {
      pattern: '[0-9A-Z]{9}',
      rule: 'mod-37-2',
      example: 'HB25T009K',
      place: 'On the back, above the mains socket',
    },
    isMainsPowered: true,
    weightGrams: 3600,
    size: [265, 228, 88],
    accessories: ['Mains lead', 'Remote control'],
  },
  {
    key: 'keel-25',
    family: 'keyboard-controllers',
    maker: 'Skerrin',
    name: 'Keel 25',
    aliases: ['Keel mini', 'KL25'],
    serial: { pattern: 'KL25\\d{5}', example: 'KL25-00384', place: 'On the label underneath' },
    weightGrams: 980,
    size: [395, 138, 48],
    accessories: ['USB cable'],
  },
  {
    key: 'keel-49',
    family: 'keyboard-controllers',
    maker: 'Skerrin',
    name: 'Keel 49',
    aliases: ['KL49'],
    serial: { pattern: 'KL49\\d{5}', example: 'KL49-02115', place: 'On the label underneath' },
    weightGrams: 2700,
    size: [742, 176, 62],
    accessories: ['USB cable', 'Sustain pedal'],
  },
  {
    key: 'jetty-61',
    family: 'keyboard-controllers',
    maker: 'Halmar',
    name: 'Jetty 61',
    aliases: ['HJ-61'],
    serial: { pattern: 'HJ\\d{7}', example: 'HJ 250 0631', place: 'On the back, left of the sockets' },
    weightGrams: 5200,
    size: [968, 254, 86],
    accessories: ['USB cable', 'Wall adapter', 'Sustain pedal'],
  },
];

/** Models as the database keeps them, with the key the rest of the demonstration calls them by. */
export const DEMO_MODELS = SEEDS.map(({ key, family, serial, battery, size, ...seed }) => ({
  ...seed,
  key,
  id: demoId('model', key),
  familyId: demoId('family', family),
  slug: `${seed.maker.toLowerCase()}-${key}`,
  serialPattern: serial.pattern,
  serialRule: serial.rule ?? ('none' as const),
  serialExample: serial.example,
  serialPlace: serial.place,
  battery: battery?.kind ?? ('none' as const),
  batteryWh: battery?.wh ?? null,
  isMainsPowered: seed.isMainsPowered ?? false,
  lengthMm: size[0],
  widthMm: size[1],
  heightMm: size[2],
}));
