import { nothingHere, type OfToken, servePdf } from '@/app/serve-file';
import { drawPackingSlip } from '@/lib/documents/packing-slip';
import { slipData } from '@/lib/jobs/slip-data';
import { slipOfJob } from '@/lib/jobs/stored-recall';
import { jobOfToken } from '../open-job';

export async function GET(_request: Request, { params }: OfToken): Promise<Response> {
  const job = await jobOfToken((await params).token);
  if (!job || !(await slipOfJob(job)).isOffered) return nothingHere();
  return servePdf(await drawPackingSlip(await slipData(job)), `packing-slip-${job.number}`);
}
