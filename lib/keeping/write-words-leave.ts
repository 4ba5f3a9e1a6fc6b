import type { Tx } from '@/lib/db/transaction';

/** What stands in the place of a device that a customer described. */
export const REMOVED_DEVICE = 'Device in words that were removed';

/**
 * Takes the customer's own words and their parcels' references out of what stays of jobs and requests: the history, the
 * letters that left, what came along in the parcel, and the device where it is none of the catalogue. What the catalogue calls
 * an accessory or a device says nothing of a person and stays.
 */
export async function writeWordsLeave(tx: Tx, jobIds: string[], quoteIds: string[]): Promise<void> {
  // The database lets nothing but exactly this be changed in a row of the history.
  await tx.$executeRaw`
    update "job_event" set "data" = without_words("data", "actorKind")
    where "jobId" = any(${jobIds}) and "data" is distinct from without_words("data", "actorKind")`;
  await tx.$executeRaw`
    update "mail" set "lastError" = null, "data" = ("data"
      || case when "data" ? 'text' then '{"text": ""}'::jsonb else '{}'::jsonb end
      || case when "data" ? 'told' then jsonb_build_object('told', ("data" -> 'told') || '{"words": ""}'::jsonb) else '{}'::jsonb end
      || case when "data" ? 'carrierReference' then '{"carrierReference": ""}'::jsonb else '{}'::jsonb end
      || case when "template" in ('parcel-sought', 'search-ended') then '{"note": ""}'::jsonb else '{}'::jsonb end
      || case when "data" ? 'differences' then '{"differences": []}'::jsonb else '{}'::jsonb end
      || case when "template" in ('job-cancelled', 'repair-stopped', 'work-reopened', 'parcel-came-back', 'claim-reopened', 'arrival-undone', 'dispatch-undone', 'postage-ended') then '{"reason": ""}'::jsonb else '{}'::jsonb end) - 'tracking'
    where "jobId" = any(${jobIds}) or "quoteId" = any(${quoteIds})`;
  await tx.$executeRaw`
    update "accessory" a set "name" = 'Something else ' || own."nth"
    from (
      select x."id", row_number() over (partition by x."jobId" order by x."name") as "nth"
      from "accessory" x join "job" j on j."id" = x."jobId" join "model" m on m."id" = j."modelId"
      where x."jobId" = any(${jobIds}) and x."name" <> all(m."accessories")
    ) own
    where a."id" = own."id"`;
  await tx.quoteRequest.updateMany({
    where: { quoteId: { in: quoteIds }, modelId: null },
    data: { device: REMOVED_DEVICE },
  });
}
