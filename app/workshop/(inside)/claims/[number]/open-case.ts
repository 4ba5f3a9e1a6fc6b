import 'server-only';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { requireStaff, type Staff } from '@/app/workshop/who';
import { staffNames } from '@/lib/jobs/records';
import { type ClaimCase, readClaimCase } from '@/lib/warranty/claim-desk-case';
import type { WorkshopCard } from '@/lib/workshop/card';

export type CaseProps = {
  found: ClaimCase;
  workshop: WorkshopCard;
  names: ReadonlyMap<string, { name: string; initials: string }>;
  who: Staff;
};

/** One claim for a signed-in person, or the page that says there is nothing here. */
export async function openCase(number: string, compareWith: string | null): Promise<CaseProps> {
  const who = await requireStaff('take-in');
  const found = await readClaimCase(number, compareWith);
  if (!found) nothingHere();
  const [workshop, names] = await Promise.all([readWorkshop(), staffNames()]);
  return { found, workshop, names, who };
}
