import { nothingHere, type OfNumber, servePdf } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { drawBagLabel, drawBagLabelSheet, labelsPerSheet } from '@/lib/documents/bag-label';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { labelOf } from '@/lib/jobs/label-data';
import { readPlaces } from '@/lib/parcels/rules/label-places';
import { readWorkshop } from '@/lib/workshop/records';

/** One label of 62 x 29 mm; or, when a place on the sheet is asked for, A4 with so many of them from there on. */
export async function GET(request: Request, { params }: OfNumber): Promise<Response> {
  await requireStaff();
  const job = await jobByNumber((await params).number);
  if (!job) return nothingHere();
  const workshop = await readWorkshop();
  const setting = { workshop: workshop.name, locale: workshop.locale, made: job.arrivedAt ?? job.bookedAt };
  const places = readPlaces(new URL(request.url).searchParams, labelsPerSheet);
  const label = labelOf(job);
  const bytes = places
    ? await drawBagLabelSheet(
        Array.from({ length: places.count }, () => label),
        setting,
        places.first,
      )
    : await drawBagLabel(label, setting);
  return servePdf(bytes, places ? `labels-${job.number}` : `label-${job.number}`);
}
