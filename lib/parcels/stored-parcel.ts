import type { JobRecord } from '@/lib/jobs/records';
import { batteryAnswer, batteryKind } from '@/lib/jobs/rules/posted-answer';
import type { BatteryKind } from './rules/battery';
import type { PackedParcel } from './rules/carriers';
import {
  isPackedBattery,
  type PackedBattery,
  packedBatteryFrom,
  packedVerdict,
} from './rules/packed-battery';
import type { ParcelMeasures } from './rules/weight';

/** The parcel that goes back, as it was packed; what nobody has said yet is null. */
export type ParcelFacts = {
  grams: number | null;
  sides: ParcelMeasures['sides'] | null;
  /** what the unit is worth, minor units */
  valueMinor: number | null;
  battery: PackedBattery;
};

export type BatteryOfModel = { battery: BatteryKind; wattHours: number | null };

export function batteryOfModel(job: Pick<JobRecord, 'model'>): BatteryOfModel {
  return { battery: batteryKind(job.model.battery), wattHours: job.model.batteryWh };
}

/** What is kept of a job's parcel; of the battery, what was said last when packing, or else at booking. */
export function readParcel(job: JobRecord): ParcelFacts {
  const { parcelGrams, parcelLengthMm, parcelWidthMm, parcelHeightMm, valueMinor, model } = job;
  const isMeasured = parcelLengthMm !== null && parcelWidthMm !== null && parcelHeightMm !== null;
  return {
    grams: parcelGrams,
    sides: isMeasured ? [parcelLengthMm, parcelWidthMm, parcelHeightMm] : null,
    valueMinor,
    battery:
      batteryAsPacked(job) ??
      packedBatteryFrom(batteryKind(model.battery), batteryAnswer(model, job.batteryAnswer)),
  };
}

function batteryAsPacked(job: JobRecord): PackedBattery | null {
  const packed = job.events.findLast((event) => event.kind === 'parcel-packed')?.data;
  const said = packed && typeof packed === 'object' && 'battery' in packed ? packed['battery'] : null;
  return typeof said === 'string' && isPackedBattery(said) ? said : null;
}

/** The parcel as a carrier is asked about it. */
export function parcelToAsk(parcel: ParcelFacts, model: BatteryOfModel): PackedParcel {
  return {
    weight: parcel.grams,
    sides: parcel.sides,
    valueMinor: parcel.valueMinor,
    battery: packedVerdict(model, parcel.battery),
  };
}
