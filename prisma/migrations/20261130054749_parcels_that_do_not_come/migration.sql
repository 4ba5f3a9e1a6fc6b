-- AlterTable
ALTER TABLE "job" ADD COLUMN     "parcelNamedAt" TIMESTAMPTZ(3),
ADD COLUMN     "parcelRemindedAt" TIMESTAMPTZ(3);

-- AlterTable
ALTER TABLE "workshop" ADD COLUMN     "parcelOverDays" INTEGER NOT NULL DEFAULT 45,
ADD COLUMN     "parcelRemindDays" INTEGER NOT NULL DEFAULT 14;

-- What the history knows of parcels that are still awaited.
UPDATE "job" SET "parcelNamedAt" = (
  SELECT MAX(e."at") FROM "job_event" e WHERE e."jobId" = "job"."id" AND e."kind" = 'parcel-named'
) WHERE "stage" = 'booked';
