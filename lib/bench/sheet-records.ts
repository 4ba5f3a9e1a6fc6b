import { db } from '@/lib/db/client';
import { inOrder } from '@/lib/db/in-order';
import type { Tx } from '@/lib/db/transaction';
import { sheetsOf } from './rules/job-sheets';

/** The newest version of a repair's check sheet; null where it has none. */
export async function newestSheetOf(repairId: string, client: Tx = db) {
  return client.checkSheet.findFirst({
    where: { repairId },
    orderBy: { version: 'desc' },
    select: { id: true, version: true },
  });
}

/**
 * What was entered on a job under another sheet than those it is proved on, of an earlier version or of the repair it was under before, in
 * order, with the check each belongs to.
 */
export async function earlierEntries(job: {
  id: string;
  sheet: { id: string };
  besides: readonly { sheet: { id: string } }[];
}) {
  return db.checkEntry.findMany({
    where: { jobId: job.id, check: { sheetId: { notIn: sheetsOf(job).map(({ id }) => id) } } },
    orderBy: inOrder,
    include: {
      check: {
        select: {
          id: true,
          label: true,
          unit: true,
          sheet: { select: { version: true, repair: { select: { name: true } } } },
        },
      },
    },
  });
}
