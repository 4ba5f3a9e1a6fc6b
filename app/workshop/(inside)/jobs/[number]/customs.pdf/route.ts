import { nothingHere, type OfNumber, servePdf } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { drawCustomsNote } from '@/lib/documents/customs-note';
import { customsData } from '@/lib/jobs/customs-data';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { familyName } from '@/lib/parcels/records';
import { readWorkshop } from '@/lib/workshop/records';

export async function GET(_request: Request, { params }: OfNumber): Promise<Response> {
  await requireStaff();
  const job = await jobByNumber((await params).number);
  if (!job) return nothingHere();
  const [workshop, family] = await Promise.all([readWorkshop(), familyName(job.model.familyId)]);
  return servePdf(
    await drawCustomsNote(customsData(job, { workshop, family })),
    `customs-note-${job.number}`,
  );
}
