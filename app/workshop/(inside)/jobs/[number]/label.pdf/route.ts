import { nothingHere, serveFile } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { config } from '@/lib/config';
import { drawBagLabel } from '@/lib/documents/bag-label';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { readWorkshop } from '@/lib/workshop/records';

export async function GET(
  _request: Request,
  { params }: { params: Promise<{ number: string }> },
): Promise<Response> {
  await requireStaff();
  const job = await jobByNumber((await params).number);
  if (!job) return nothingHere();
  const workshop = await readWorkshop();
  const bytes = await drawBagLabel(
    {
      job: job.number,
      code: `${config.appUrl}/workshop/jobs/${job.number}`,
      model: `${job.model.maker} ${job.model.name}`,
      serial: job.serialTyped,
    },
    { workshop: workshop.name, locale: workshop.locale, made: job.arrivedAt ?? job.bookedAt },
  );
  return serveFile(bytes, { type: 'application/pdf', name: `label-${job.number}.pdf` });
}
