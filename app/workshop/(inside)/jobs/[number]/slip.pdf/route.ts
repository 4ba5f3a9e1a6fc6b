import { nothingHere, serveFile } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { drawPackingSlip } from '@/lib/documents/packing-slip';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { packingSlip } from '@/lib/jobs/rules/packing-slip';
import { slipData } from '@/lib/jobs/slip-data';

export async function GET(
  _request: Request,
  { params }: { params: Promise<{ number: string }> },
): Promise<Response> {
  await requireStaff();
  const job = await jobByNumber((await params).number);
  if (!job || !packingSlip(job).isOffered) return nothingHere();
  return serveFile(await drawPackingSlip(await slipData(job)), {
    type: 'application/pdf',
    name: `packing-slip-${job.number}.pdf`,
  });
}
