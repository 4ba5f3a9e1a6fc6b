import { csvAnswer } from '@/app/workshop/csv-answer';
import { requireStaff } from '@/app/workshop/who';
import { orderCsv, readOrderList } from '@/lib/bench/order-records';
import { now } from '@/lib/clock';

export async function GET(): Promise<Response> {
  await requireStaff();
  return csvAnswer('order', orderCsv((await readOrderList(now())).rows));
}
