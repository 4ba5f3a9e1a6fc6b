import type { PolicyTerms } from '@/lib/warranty/rules/terms';
import { demoId } from './demo-id';

const EVERYWHERE = [
  'Damage after the unit came back: a drop, a blow, liquid, or a wrong power supply',
  'Work by somebody else on the part we repaired',
  'Faults in parts we did not touch',
];

type PolicySeed = { key: string; name: string; terms: PolicyTerms };

const SEEDS: readonly PolicySeed[] = [
  {
    key: 'connector-work',
    name: 'Connector work',
    terms: {
      startEvent: 'handed-to-carrier',
      workTerm: 'P12M',
      partsTerm: 'P12M',
      exclusions: ['A plug that was levered or pulled sideways by force', ...EVERYWHERE],
      renewedMinimum: 'P90D',
      heldRule: 'whole-days',
      rollLastDay: true,
      graceDays: 7,
      transferable: true,
    },
  },
  {
    key: 'liquid-damage',
    name: 'Liquid damage work',
    terms: {
      startEvent: 'delivered',
      workTerm: 'P30D',
      partsTerm: 'P90D',
      exclusions: [
        'Corrosion that goes on under parts we could not lift; we tell you where we saw it',
        ...EVERYWHERE,
      ],
      renewedMinimum: 'P30D',
      heldRule: 'whole-days',
      rollLastDay: true,
      graceDays: 7,
      transferable: true,
    },
  },
  {
    key: 'battery-and-display',
    name: 'Battery and display parts',
    terms: {
      startEvent: 'handed-to-carrier',
      workTerm: 'P6M',
      partsTerm: 'P6M',
      exclusions: [
        'A battery that holds less than new after normal use, down to four fifths of its size',
        ...EVERYWHERE,
      ],
      renewedMinimum: 'P90D',
      heldRule: 'from-seven-days',
      rollLastDay: true,
      graceDays: 7,
      transferable: true,
    },
  },
];

/** Policies of the demonstration, each with one version. */
export const DEMO_POLICIES = SEEDS.map((seed) => ({
  ...seed,
  id: demoId('policy', seed.key),
  versionId: demoId('policy-version', `${seed.key}/1`),
}));

export type DemoPolicyKey = 'connector-work' | 'liquid-damage' | 'battery-and-display';
