-- CreateIndex
CREATE INDEX "unit_watch_firstEndsOn_idx" ON "unit_watch"("firstEndsOn");

-- Few units come back; what they cost is read without the others (lib/returns/tallies.ts, lib/returns/year.ts). The schema language has no partial index.
CREATE INDEX "unit_watch_returned" ON "unit_watch"("repairId") WHERE "returnedOn" IS NOT NULL;
