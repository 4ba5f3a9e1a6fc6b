import { cache } from 'react';
import { readWorkshop } from '@/app/read-workshop';
import { readLot } from '@/lib/bench/part-records';
import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';

/** A lot with its units and their cover as of today in the workshop's zone; read once for each request. */
export const lotToday = cache(async (id: string) =>
  readLot(id, dayInZone(now(), (await readWorkshop()).timeZone)),
);
