-- Attempts are counted in "attempt" (lib/people/limit-attempts.ts); nothing ever read or wrote this table.
DROP TABLE "auth_rate_limit";
