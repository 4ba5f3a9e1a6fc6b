-- Nobody put the question about recordings to whoever opened a claim, or whose unit came without a booking. An answer was kept for
-- them all the same: "nothing on it that I need" and "no copy". From now on a claim asks, so everything kept by then was not asked.
UPDATE "job" SET "dataAnswer" = 'not-asked'
WHERE "kind" = 'claim'
  OR EXISTS (
    SELECT 1 FROM "job_event" e
    WHERE e."jobId" = "job"."id" AND e."kind" = 'booked' AND e."data" ->> 'isWalkIn' = 'true'
  );
