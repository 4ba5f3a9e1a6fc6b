import { nothingHere, type OfNumber, servePdf } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { drawPackingSlip } from '@/lib/documents/packing-slip';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { slipData } from '@/lib/jobs/slip-data';
import { slipOfJob } from '@/lib/jobs/stored-recall';

export async function GET(_request: Request, { params }: OfNumber): Promise<Response> {
  await requireStaff();
  const job = await jobByNumber((await params).number);
  if (!job || !(await slipOfJob(job)).isOffered) return nothingHere();
  return servePdf(await drawPackingSlip(await slipData(job)), `packing-slip-${job.number}`);
}
