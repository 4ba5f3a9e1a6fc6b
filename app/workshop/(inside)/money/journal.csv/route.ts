import { nothingHere, serveFile } from '@/app/serve-file';
import { staffActor } from '@/app/workshop/staff-actor';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { isMonth } from '@/lib/invoices/journal';
import { takeJournal } from '@/lib/invoices/take-journal';
import { rolesThatMay } from '@/lib/people/rules/roles';

export async function GET(request: Request): Promise<Response> {
  const staff = await requireStaff(rolesThatMay('money'));
  const { searchParams } = new URL(request.url);
  const month = searchParams.get('month') ?? '';
  // What is taken is noted. Another site may send a browser here, but not in the owner's place.
  if (!isMonth(month) || request.headers.get('sec-fetch-site') === 'cross-site') return nothingHere();
  const asked = searchParams.get('part') === 'since' ? 'since' : 'whole';
  const text = await takeJournal({ month, asked, actor: staffActor(staff), now: now() });
  if (text === null) return nothingHere();
  return serveFile(new TextEncoder().encode(text), {
    type: 'text/csv; charset=utf-8',
    name: asked === 'since' ? `journal-${month}-entered-since.csv` : `journal-${month}.csv`,
    download: true,
  });
}
