-- A caller says a telephone number, a town, a postcode or what their carrier calls the parcel (lib/jobs/stored-sought.ts).
-- The indexes of 20261129032500 take these in, and those who only asked for a price have one of their own. As there: without
-- the extension the search reads every row, as it did before.
DO $$
BEGIN
  DROP INDEX IF EXISTS "job_parts";
  DROP INDEX IF EXISTS "customer_parts";
  CREATE INDEX "job_parts" ON "job" USING gin (("number" || ' ' || "serialKey" || ' '
    || upper(regexp_replace("inboundReference", '[^A-Za-z0-9]', '', 'g')) || ' '
    || upper(regexp_replace("carrierReference", '[^A-Za-z0-9]', '', 'g'))) gin_trgm_ops);
  CREATE INDEX "customer_parts" ON "customer" USING gin ((lower("name") || ' ' || lower("email") || ' ' || lower("town") || ' '
    || regexp_replace(lower("postcode"), '[^a-z0-9]', '', 'g') || ' ' || regexp_replace("phone", '[^0-9]', '', 'g')) gin_trgm_ops);
  CREATE INDEX "request_parts" ON "quote_request" USING gin ((lower("name") || ' ' || lower("email") || ' ' || lower("device") || ' '
    || lower("serialKey") || ' ' || regexp_replace("phone", '[^0-9]', '', 'g')) gin_trgm_ops);
  CREATE INDEX "lot_parts" ON "lot" USING gin ((upper(regexp_replace("code", '[^A-Za-z0-9]', '', 'g'))) gin_trgm_ops);
  CREATE INDEX "buyer_parts" ON "invoice" USING gin ((lower("buyer"->>'name')) gin_trgm_ops);
EXCEPTION
  WHEN insufficient_privilege OR undefined_file OR feature_not_supported OR undefined_object THEN
    RAISE NOTICE 'pg_trgm is not to be had here: a search by a part of a text reads every row';
END
$$;

-- Everything of one person is found by their address as it is compared (lib/keeping/records.ts).
CREATE INDEX "customer_email_compared" ON "customer"(lower(btrim("email")));
