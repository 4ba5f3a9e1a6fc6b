import { serveFile } from '@/app/serve-file';
import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import { readWorkshop } from '@/lib/workshop/records';

/** A list as a file to keep, named with the day it was taken out on. */
export async function csvAnswer(name: string, text: string): Promise<Response> {
  const { timeZone } = await readWorkshop();
  return serveFile(new TextEncoder().encode(text), {
    type: 'text/csv; charset=utf-8',
    name: `${name}-${dayInZone(now(), timeZone)}.csv`,
    download: true,
  });
}
