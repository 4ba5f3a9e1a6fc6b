-- What a customer said whose answer staff wrote down are their words too: they leave with the rest, and that it was told stays.
CREATE OR REPLACE FUNCTION "without_words"("data" jsonb, "actorKind" text) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
  SELECT "data"
    || CASE WHEN "data" ? 'reference' THEN '{"reference": ""}'::jsonb ELSE '{}'::jsonb END
    || CASE WHEN "data" ? 'accessories' THEN '{"accessories": []}'::jsonb ELSE '{}'::jsonb END
    || CASE WHEN "data" ? 'differences' THEN '{"differences": []}'::jsonb ELSE '{}'::jsonb END
    || CASE WHEN "data" ? 'note' AND "actorKind" = 'customer' THEN '{"note": ""}'::jsonb ELSE '{}'::jsonb END
    || CASE WHEN "data" ? 'told' THEN jsonb_build_object('told', ("data" -> 'told') || '{"words": ""}'::jsonb)
       ELSE '{}'::jsonb END
$$;
