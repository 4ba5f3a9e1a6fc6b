-- What Prisma's schema cannot say and the database must decide itself.

-- One workshop.
ALTER TABLE "workshop" ADD CONSTRAINT "workshop_single_row" CHECK ("id" = 1);

-- Stages and kinds as in lib/jobs/rules/stages.ts (tests/jobs compares the two).
ALTER TABLE "job" ADD CONSTRAINT "job_kind_known" CHECK ("kind" IN ('repair', 'claim'));
ALTER TABLE "job" ADD CONSTRAINT "job_stage_known" CHECK ("stage" IN
  ('booked', 'arrived', 'assessing', 'awaiting-approval', 'awaiting-parts', 'on-bench', 'proving', 'ready',
   'sent-back', 'closed', 'cancelled', 'declined', 'unclaimed'));

-- A second claim on a certificate opens nothing while one is not closed, whatever the revision.
CREATE UNIQUE INDEX "claim_one_open_per_certificate" ON "claim" ("certificateNumber") WHERE "state" <> 'closed';
ALTER TABLE "claim" ADD CONSTRAINT "claim_state_known" CHECK ("state" IN ('open', 'ruled', 'closed'));

-- One revision of a certificate is in force.
CREATE UNIQUE INDEX "certificate_one_in_force" ON "certificate" ("number") WHERE "supersededAt" IS NULL;
-- One dispatch issues one certificate.
CREATE UNIQUE INDEX "certificate_one_per_job" ON "certificate" ("jobId");

-- One offer open and one agreed price at a time.
CREATE UNIQUE INDEX "quote_revision_one_sent" ON "quote_revision" ("quoteId") WHERE "state" = 'sent';
CREATE UNIQUE INDEX "quote_revision_one_accepted" ON "quote_revision" ("quoteId") WHERE "state" = 'accepted';
ALTER TABLE "quote_revision" ADD CONSTRAINT "quote_revision_state_known"
  CHECK ("state" IN ('sent', 'accepted', 'declined', 'replaced'));
ALTER TABLE "quote_revision" ADD CONSTRAINT "quote_revision_adds_up" CHECK ("netMinor" + "taxMinor" = "grossMinor");

-- Stock never falls below nothing.
ALTER TABLE "lot" ADD CONSTRAINT "lot_stock_in_range" CHECK ("inStock" >= 0 AND "inStock" <= "received");
ALTER TABLE "part_use" ADD CONSTRAINT "part_use_some" CHECK ("quantity" > 0);
ALTER TABLE "work_entry" ADD CONSTRAINT "work_entry_minutes" CHECK ("minutes" >= 0);
ALTER TABLE "held_interval" ADD CONSTRAINT "held_interval_forward" CHECK ("toDay" >= "fromDay");
ALTER TABLE "payment" ADD CONSTRAINT "payment_some" CHECK ("amountMinor" <> 0);

-- Kept for good: the history of a job, and a certificate as it was issued.
CREATE FUNCTION "refuse_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is kept for good', TG_TABLE_NAME USING ERRCODE = 'restrict_violation';
END $$;
CREATE TRIGGER "job_event_kept" BEFORE UPDATE OR DELETE ON "job_event"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "certificate_line_kept" BEFORE UPDATE OR DELETE ON "certificate_line"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "certificate_kept" BEFORE DELETE ON "certificate"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
-- The one change a certificate may see: being marked as replaced, once.
CREATE TRIGGER "certificate_only_superseded" BEFORE UPDATE ON "certificate"
  FOR EACH ROW WHEN (
    OLD."supersededAt" IS NOT NULL
    OR (OLD."id", OLD."number", OLD."revision", OLD."jobId", OLD."policyVersionId", OLD."modelName", OLD."serialTyped",
        OLD."serialKey", OLD."issuedAt", OLD."issuedOn", OLD."endsOn", OLD."keyId", OLD."signature", OLD."fileKey", OLD."sha256")
       IS DISTINCT FROM
       (NEW."id", NEW."number", NEW."revision", NEW."jobId", NEW."policyVersionId", NEW."modelName", NEW."serialTyped",
        NEW."serialKey", NEW."issuedAt", NEW."issuedOn", NEW."endsOn", NEW."keyId", NEW."signature", NEW."fileKey", NEW."sha256")
  ) EXECUTE FUNCTION "refuse_change"();
