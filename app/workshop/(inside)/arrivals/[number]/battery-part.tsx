import { Notice } from '@/app/ui/page/notice';
import { cautionOf } from '@/lib/bench/rules/cautions';
import type { JobRecord } from '@/lib/jobs/records';
import { batteryAnswer, batteryKind } from '@/lib/jobs/rules/posted-answer';
import { BATTERY_ANSWERS } from '@/lib/parcels/rules/battery-answers';

/** Cautions that matter while a parcel is opened: a lithium cell in it, a mains supply in it. */
export function BatteryPart({ job }: { job: JobRecord }) {
  const { model } = job;
  const cell = batteryKind(model.battery) === 'lithium-ion' ? cautionOf('lithium-cells') : null;
  const mains = model.isMainsPowered ? cautionOf('mains-capacitors') : null;
  const answer = batteryAnswer(model, job.batteryAnswer);
  const told = BATTERY_ANSWERS.find((each) => each.value === answer)?.label;
  return (
    <>
      {cell ? (
        <Notice kind="warn" heading={cell.title}>
          <p>
            <strong>{`The customer told us: ${told ?? 'nothing about the battery'}. `}</strong>
            Look before you lift it out. Bulging, warm, wet or a sharp smell: do not switch it on and do not
            charge it.
          </p>
          <p>{cell.text}</p>
        </Notice>
      ) : null}
      {mains ? (
        <Notice kind="warn" heading={mains.title}>
          <p>{mains.text}</p>
        </Notice>
      ) : null}
    </>
  );
}
