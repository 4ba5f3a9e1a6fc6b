import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { coverClock } from '@/lib/returns/cover-clock';
import { rowsCsv } from '@/lib/returns/rows-csv';
import { readWorkshop } from '@/lib/workshop/records';
import { depthOf, narrowingOf, permissionFor, readRowsAsked } from '../rows/narrowing';

/** The rows behind a figure as a file, written as it is read: a hundred thousand jobs never lie in memory at once. */
export async function GET(request: Request): Promise<Response> {
  const asked = readRowsAsked(Object.fromEntries(new URL(request.url).searchParams));
  const staff = await requireStaff(permissionFor(asked.by));
  const workshop = await readWorkshop();
  const texts = rowsCsv(
    coverClock(workshop, now()),
    narrowingOf(asked),
    depthOf(staff.role, workshop.currency),
  );
  const encoder = new TextEncoder();
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const next = await texts.next();
      if (next.done) controller.close();
      else controller.enqueue(encoder.encode(next.value));
    },
    async cancel() {
      await texts.return(undefined);
    },
  });
  return new Response(body, {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="returns.csv"',
      'cache-control': 'private, no-store',
      'x-content-type-options': 'nosniff',
    },
  });
}
