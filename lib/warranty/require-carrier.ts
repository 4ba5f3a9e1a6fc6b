import type { JobRecord } from '@/lib/jobs/records';
import type { Handover } from '@/lib/jobs/rules/handover';
import { Refusal } from '@/lib/outcome';
import { readCarrierRows } from '@/lib/parcels/records';
import { NOT_POSTED, problemSentences } from '@/lib/parcels/rules/carrier-sentences';
import { askCarrier, findCarrier } from '@/lib/parcels/rules/carriers';
import { referenceProblem } from '@/lib/parcels/rules/reference';
import { batteryOfModel, type ParcelFacts, parcelToAsk, readParcel } from '@/lib/parcels/stored-parcel';
import type { WorkshopCard } from '@/lib/workshop/card';

/** A reference that looks like one of the post is checked before the parcel is gone. */
export function requireReference(handover: Handover): void {
  if (handover.by === 'collected') return;
  const problem = referenceProblem(handover.carrierReference);
  if (problem) throw new Refusal('invalid', problem, 'carrierReference');
}

/**
 * A carrier of the workshop's list is asked before it is given the parcel; one that is typed by hand has no limits here. A
 * battery that may not be posted goes with neither. The list's own spelling is kept, so that a carrier has one hand-over list.
 */
export async function requireCarrier(
  job: JobRecord,
  o: { handover: Handover; parcel?: ParcelFacts },
  money: WorkshopCard,
): Promise<Handover> {
  if (o.handover.by === 'collected') return o.handover;
  const rows = await readCarrierRows();
  const parcel = parcelToAsk(o.parcel ?? readParcel(job), batteryOfModel(job));
  const listed = findCarrier(
    o.handover.carrier,
    rows.filter(({ isUsed }) => isUsed),
  );
  const sentences = listed
    ? problemSentences(askCarrier(listed, parcel), money)
    : parcel.battery.may === 'do-not-post'
      ? [NOT_POSTED]
      : [];
  if (sentences.length > 0) throw new Refusal('invalid', sentences.join(' '), 'carrier');
  return { ...o.handover, carrier: findCarrier(o.handover.carrier, rows)?.name ?? o.handover.carrier };
}
