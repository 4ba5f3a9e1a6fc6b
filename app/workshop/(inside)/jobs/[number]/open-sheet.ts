import { nothingHere } from '@/app/nothing-here';
import 'server-only';
import { cache } from 'react';

import { readWorkshop } from '@/app/read-workshop';
import { requireStaff } from '@/app/workshop/who';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { type JobRecord, staffNames } from '@/lib/jobs/records';
import type { Permission } from '@/lib/people/rules/roles';
import type { WorkshopCard } from '@/lib/workshop/card';

export type SheetProps = {
  job: JobRecord;
  workshop: WorkshopCard;
  staff: ReadonlyMap<string, { name: string; initials: string }>;
};

type OpenSheet = SheetProps & { who: Awaited<ReturnType<typeof requireStaff>> };

/**
 * The job of a sheet page for a signed-in person, with this permission where one is named, or the not-found page; read once
 * for a request, for the page and its title.
 */
export const openSheet = cache(async (number: string, needed?: Permission): Promise<OpenSheet> => {
  const who = await requireStaff(needed);
  const job = await jobByNumber(number);
  if (!job) nothingHere();
  const [workshop, staff] = await Promise.all([readWorkshop(), staffNames()]);
  return { job, workshop, staff, who };
});
