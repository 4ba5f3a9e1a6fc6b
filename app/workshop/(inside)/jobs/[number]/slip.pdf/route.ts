import { nothingHere, serveFile } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { drawPackingSlip } from '@/lib/documents/packing-slip';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { slipData } from '@/lib/jobs/slip-data';
import { slipOfJob } from '@/lib/jobs/stored-recall';

export async function GET(
  _request: Request,
  { params }: { params: Promise<{ number: string }> },
): Promise<Response> {
  await requireStaff();
  const job = await jobByNumber((await params).number);
  if (!job || !(await slipOfJob(job)).isOffered) return nothingHere();
  return serveFile(await drawPackingSlip(await slipData(job)), {
    type: 'application/pdf',
    name: `packing-slip-${job.number}.pdf`,
  });
}
