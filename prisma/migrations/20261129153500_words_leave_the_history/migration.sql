-- A job's history is kept for good, but for what it says of a person once their data is removed: the references of their
-- parcels, what they sent along in their own words, and a note that they wrote.
CREATE FUNCTION "without_words"("data" jsonb, "actorKind" text) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
  SELECT "data"
    || CASE WHEN "data" ? 'reference' THEN '{"reference": ""}'::jsonb ELSE '{}'::jsonb END
    || CASE WHEN "data" ? 'accessories' THEN '{"accessories": []}'::jsonb ELSE '{}'::jsonb END
    || CASE WHEN "data" ? 'differences' THEN '{"differences": []}'::jsonb ELSE '{}'::jsonb END
    || CASE WHEN "data" ? 'note' AND "actorKind" = 'customer' THEN '{"note": ""}'::jsonb ELSE '{}'::jsonb END
$$;

DROP TRIGGER "job_event_kept" ON "job_event";
CREATE TRIGGER "job_event_kept" BEFORE DELETE ON "job_event"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "job_event_only_words_leave" BEFORE UPDATE ON "job_event"
  FOR EACH ROW WHEN (
    (NEW."id", NEW."jobId", NEW."version", NEW."kind", NEW."at", NEW."actorKind", NEW."actorId", NEW."fromStage", NEW."toStage",
     NEW."data")
    IS DISTINCT FROM
    (OLD."id", OLD."jobId", OLD."version", OLD."kind", OLD."at", OLD."actorKind", OLD."actorId", OLD."fromStage", OLD."toStage",
     "without_words"(OLD."data", OLD."actorKind"))
  ) EXECUTE FUNCTION "refuse_change"();
