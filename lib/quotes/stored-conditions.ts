import type { WorkshopCard } from '@/lib/workshop/card';
import { takesFeeOff } from './rules/inspection-fee';
import { readLine } from './stored-lines';

/** What stands beside a price that was asked for, from the day it was sent: amounts with tax, in minor units. */
export type Conditions = {
  /** the terms of cover */
  policyVersionId: string;
  /** the most that a return unrepaired costs */
  returnFeeMinor: number;
  inspectionFeeMinor: number;
  isInspectionFeeTakenOff: boolean;
  /** what is said about a unit to use meanwhile; empty where none is offered */
  replacementText: string;
};

type StoredConditions = { [Key in keyof Conditions]: Conditions[Key] | null };

/** The conditions that a price was sent with, whatever the catalogue and the settings say since. */
export function readConditions(revision: StoredConditions): Conditions {
  const { policyVersionId, returnFeeMinor, inspectionFeeMinor, isInspectionFeeTakenOff, replacementText } =
    revision;
  if (
    policyVersionId === null ||
    returnFeeMinor === null ||
    inspectionFeeMinor === null ||
    isInspectionFeeTakenOff === null ||
    replacementText === null
  )
    throw new Error('a price that was asked for without the conditions it was sent with');
  return { policyVersionId, returnFeeMinor, inspectionFeeMinor, isInspectionFeeTakenOff, replacementText };
}

/** Whether a changed price takes the inspection fee off, after what was agreed to before. */
export function readTakesFeeOff(
  agreed: { isInspectionFeeTakenOff: boolean; lines: readonly Parameters<typeof readLine>[0][] } | undefined,
  workshop: Pick<WorkshopCard, 'isInspectionFeeTakenOff'>,
): boolean {
  return takesFeeOff(
    workshop.isInspectionFeeTakenOff,
    agreed && { lines: agreed.lines.map(readLine), isTakenOff: agreed.isInspectionFeeTakenOff },
  );
}
