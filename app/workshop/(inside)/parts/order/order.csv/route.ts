import { requireStaff } from '@/app/workshop/who';
import { orderCsv, readOrderList } from '@/lib/bench/order-records';
import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import { readWorkshop } from '@/lib/workshop/records';

export async function GET(): Promise<Response> {
  await requireStaff();
  const [{ rows }, { timeZone }] = await Promise.all([readOrderList(now()), readWorkshop()]);
  return new Response(orderCsv(rows), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="order-${dayInZone(now(), timeZone)}.csv"`,
      'cache-control': 'private, no-store',
      'x-content-type-options': 'nosniff',
      'x-robots-tag': 'noindex',
    },
  });
}
