import { z } from 'zod';
import { nothingHere, serveFile } from '@/app/serve-file';
import { staffActor } from '@/app/workshop/staff-actor';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { isMonth } from '@/lib/invoices/journal';
import { takeJournal } from '@/lib/invoices/take-journal';

export async function GET(request: Request): Promise<Response> {
  const staff = await requireStaff('money');
  const { searchParams } = new URL(request.url);
  const month = searchParams.get('month') ?? '';
  // What is taken is noted. Another site may send a browser here, but not in the owner's place.
  if (!isMonth(month) || request.headers.get('sec-fetch-site') === 'cross-site') return nothingHere();
  const again = z.uuid().safeParse(searchParams.get('again'));
  const isWhole = !again.success && searchParams.get('part') !== 'since';
  const asked = again.success ? { again: again.data } : isWhole ? 'whole' : 'since';
  const text = await takeJournal({ month, asked, actor: staffActor(staff), now: now() });
  if (text === null) return nothingHere();
  return serveFile(new TextEncoder().encode(text), {
    type: 'text/csv; charset=utf-8',
    name: isWhole ? `journal-${month}.csv` : `journal-${month}-entered-since.csv`,
    download: true,
  });
}
