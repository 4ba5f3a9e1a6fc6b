import { nothingHere, serveFile } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { isMonth, journalOf } from '@/lib/invoices/journal';
import { rolesThatMay } from '@/lib/people/rules/roles';

export async function GET(request: Request): Promise<Response> {
  await requireStaff(rolesThatMay('money'));
  const month = new URL(request.url).searchParams.get('month') ?? '';
  if (!isMonth(month)) return nothingHere();
  return serveFile(new TextEncoder().encode(await journalOf(month)), {
    type: 'text/csv; charset=utf-8',
    name: `journal-${month}.csv`,
    download: true,
  });
}
