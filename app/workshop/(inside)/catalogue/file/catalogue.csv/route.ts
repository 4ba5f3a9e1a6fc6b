import { requireStaff } from '@/app/workshop/who';
import { dayInZone } from '@/lib/calendar/day';
import { exportCatalogue } from '@/lib/catalogue/list-records';
import { now } from '@/lib/clock';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { readWorkshop } from '@/lib/workshop/records';

export async function GET(): Promise<Response> {
  await requireStaff(rolesThatMay('catalogue'));
  const { timeZone } = await readWorkshop();
  return new Response(await exportCatalogue(), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="catalogue-${dayInZone(now(), timeZone)}.csv"`,
      'cache-control': 'private, no-store',
      'x-content-type-options': 'nosniff',
      'x-robots-tag': 'noindex',
    },
  });
}
