-- What Prisma's schema cannot say about quotes and invoices.

-- A price may lapse.
ALTER TABLE "quote_revision" DROP CONSTRAINT "quote_revision_state_known";
ALTER TABLE "quote_revision" ADD CONSTRAINT "quote_revision_state_known"
  CHECK ("state" IN ('sent', 'accepted', 'declined', 'replaced', 'lapsed'));
ALTER TABLE "quote_request" ADD CONSTRAINT "quote_request_state_known"
  CHECK ("state" IN ('asked', 'questioned', 'quoted', 'accepted', 'booked', 'declined', 'lapsed', 'turned-down'));

-- A link, a photo and a message belong to a job or to a quote, never to both or neither.
ALTER TABLE "private_link" ADD CONSTRAINT "private_link_of_one" CHECK (num_nonnulls("jobId", "quoteId") = 1);
ALTER TABLE "photo" ADD CONSTRAINT "photo_of_one" CHECK (num_nonnulls("jobId", "quoteId") = 1);
ALTER TABLE "message" ADD CONSTRAINT "message_of_one" CHECK (num_nonnulls("jobId", "quoteId") = 1);

-- Words, amounts and lines of a price stay as they were sent; a decision is written on it once.
CREATE TRIGGER "quote_revision_kept" BEFORE UPDATE ON "quote_revision"
  FOR EACH ROW WHEN (
    (OLD."decidedAt" IS NOT NULL AND (OLD."decidedAt", OLD."decidedBy", OLD."agreedText")
       IS DISTINCT FROM (NEW."decidedAt", NEW."decidedBy", NEW."agreedText"))
    OR (OLD."id", OLD."quoteId", OLD."revision", OLD."isGross", OLD."reason", OLD."onYes", OLD."onNo", OLD."proposal",
        OLD."workingDays", OLD."note", OLD."issuedAt", OLD."validUntil", OLD."netMinor", OLD."taxMinor", OLD."grossMinor")
       IS DISTINCT FROM
       (NEW."id", NEW."quoteId", NEW."revision", NEW."isGross", NEW."reason", NEW."onYes", NEW."onNo", NEW."proposal",
        NEW."workingDays", NEW."note", NEW."issuedAt", NEW."validUntil", NEW."netMinor", NEW."taxMinor", NEW."grossMinor")
  ) EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "quote_line_kept" BEFORE UPDATE OR DELETE ON "quote_line"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "quote_event_kept" BEFORE UPDATE OR DELETE ON "quote_event"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();

-- Prices of the catalogue keep their history; what stands today is where it begins.
CREATE TRIGGER "repair_price_kept" BEFORE UPDATE OR DELETE ON "repair_price"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
INSERT INTO "repair_price" ("id", "repairId", "priceMinor", "taxCategory", "taxRateBps", "since")
  SELECT gen_random_uuid()::text, "id", "priceMinor", "taxCategory", "taxRateBps", now() FROM "repair";
ALTER TABLE "repair_part" ADD CONSTRAINT "repair_part_some" CHECK ("quantity" > 0);

-- An invoice adds up, has its number in its year, and is never edited (VAT Directive 2006/112/EC Art. 226(2)).
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_kind_known" CHECK ("kind" IN ('invoice', 'credit-note'));
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_corrects" CHECK (("kind" = 'credit-note') = ("correctsId" IS NOT NULL));
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_adds_up"
  CHECK ("netMinor" + "taxMinor" + "roundingMinor" = "payableMinor");
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_sequence_from_one" CHECK ("sequence" > 0);
CREATE TRIGGER "invoice_kept" BEFORE DELETE ON "invoice"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
-- The one change an invoice may see: its document being stored, once.
CREATE TRIGGER "invoice_only_filed" BEFORE UPDATE ON "invoice"
  FOR EACH ROW WHEN (
    OLD."fileKey" IS NOT NULL
    OR (to_jsonb(OLD) - 'fileKey' - 'sha256') IS DISTINCT FROM (to_jsonb(NEW) - 'fileKey' - 'sha256')
  ) EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "invoice_line_kept" BEFORE UPDATE OR DELETE ON "invoice_line"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "invoice_tax_kept" BEFORE UPDATE OR DELETE ON "invoice_tax"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
