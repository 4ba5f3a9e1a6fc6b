-- A claim was written as if its customer had agreed to terms that nobody showed them.
UPDATE "job" SET "termsAcceptedAt" = NULL WHERE "kind" = 'claim';
