-- AlterTable
ALTER TABLE "auth_user" ADD COLUMN     "hasTemporaryPassword" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "temporaryPasswordUntil" TIMESTAMPTZ(3);

-- What marked a password as temporary so far was a row of the auth library's own table.
UPDATE "auth_user" u SET "hasTemporaryPassword" = true,
  "temporaryPasswordUntil" = CASE v."value" WHEN 'without-end' THEN NULL ELSE v."value"::timestamptz END
FROM "auth_verification" v WHERE v."identifier" = 'temporary-password:' || u."id";
DELETE FROM "auth_verification" WHERE "identifier" LIKE 'temporary-password:%';
