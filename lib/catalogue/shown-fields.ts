import type { FamilyInput } from './save-family';
import type { ModelInput } from './save-model';
import type { RepairInput } from './save-repair';

/** What the forms of the catalogue show of a row, for its mark (lib/shown-row.ts). */

export const FAMILY_FIELDS = { name: true, position: true } as const satisfies Record<
  keyof FamilyInput,
  true
>;

/** A policy shows its name and its newest version, which tells all the rest. */
export const POLICY_FIELDS = { name: true, version: true } as const;

export const MODEL_FIELDS = {
  familyId: true,
  maker: true,
  name: true,
  aliases: true,
  serialPattern: true,
  serialRule: true,
  serialExample: true,
  serialPlace: true,
  battery: true,
  batteryWh: true,
  isMainsPowered: true,
  weightGrams: true,
  lengthMm: true,
  widthMm: true,
  heightMm: true,
  tariffNumber: true,
  accessories: true,
  isListed: true,
} as const satisfies Record<keyof ModelInput, true>;

export const REPAIR_FIELDS = {
  modelId: true,
  policyId: true,
  name: true,
  summary: true,
  priceMinor: true,
  taxCategory: true,
  taxRateBps: true,
  minutes: true,
  workingDays: true,
  symptoms: true,
  isListed: true,
} as const satisfies Record<keyof RepairInput, true>;
