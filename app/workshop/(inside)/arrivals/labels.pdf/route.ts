import { nothingHere, servePdf } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { drawBagLabelSheet, labelsPerSheet } from '@/lib/documents/bag-label';
import { labelsOfArrived } from '@/lib/jobs/label-data';
import { readPlaces } from '@/lib/parcels/rules/label-places';
import { readWorkshop } from '@/lib/workshop/records';

/** Labels of every unit that waits to be assessed on A4, from a chosen place on. */
export async function GET(request: Request): Promise<Response> {
  await requireStaff('take-in');
  const made = now();
  const labels = await labelsOfArrived();
  if (labels.length === 0) return nothingHere();
  const { name, locale } = await readWorkshop();
  const first = readPlaces(new URL(request.url).searchParams, labelsPerSheet)?.first ?? 0;
  return servePdf(await drawBagLabelSheet(labels, { workshop: name, locale, made }, first), 'labels');
}
