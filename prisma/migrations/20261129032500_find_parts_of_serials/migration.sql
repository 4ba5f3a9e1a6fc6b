-- A part of a serial, a number, a name or an e-mail is found through its groups of three characters (lib/jobs/find-by-text.ts).
-- The indexes are on expressions that only this search uses: on "serialKey" itself the planner would take them for whole
-- serials too, which is slower (docs/measured.md).
--
-- A server may not have the extension, or not allow it to this user; then the search reads every job, as it did before.
DO $$
BEGIN
  CREATE EXTENSION IF NOT EXISTS pg_trgm;
  CREATE INDEX "job_parts" ON "job" USING gin (("number" || ' ' || "serialKey") gin_trgm_ops);
  CREATE INDEX "customer_parts" ON "customer" USING gin ((lower("name") || ' ' || lower("email")) gin_trgm_ops);
EXCEPTION
  WHEN insufficient_privilege OR undefined_file OR feature_not_supported OR undefined_object THEN
    RAISE NOTICE 'pg_trgm is not to be had here: a search by a part of a serial reads every job';
END
$$;
