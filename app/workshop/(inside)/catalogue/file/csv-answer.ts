import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import { readWorkshop } from '@/lib/workshop/records';

/** One of the catalogue's files, named with the day it was taken out on. */
export async function csvAnswer(name: string, text: string): Promise<Response> {
  const { timeZone } = await readWorkshop();
  return new Response(text, {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="${name}-${dayInZone(now(), timeZone)}.csv"`,
      'cache-control': 'private, no-store',
      'x-content-type-options': 'nosniff',
      'x-robots-tag': 'noindex',
    },
  });
}
