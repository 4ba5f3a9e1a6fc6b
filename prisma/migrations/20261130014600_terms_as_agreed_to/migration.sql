-- AlterTable
ALTER TABLE "job" ADD COLUMN     "termsId" TEXT;

-- CreateTable
CREATE TABLE "terms_text" (
    "id" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "firstAgreedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "terms_text_pkey" PRIMARY KEY ("id")
);

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_termsId_fkey" FOREIGN KEY ("termsId") REFERENCES "terms_text"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Terms that somebody agreed to stay as they were.
CREATE TRIGGER "terms_text_kept" BEFORE UPDATE OR DELETE ON "terms_text"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();

-- Contracts that were made before: the terms of their day are known only where no setting was saved since. The key is the one
-- that lib/workshop/terms-id.ts works out.
INSERT INTO "terms_text" ("id", "text", "firstAgreedAt")
  SELECT translate(encode(sha256(convert_to(w."termsText", 'UTF8')), 'base64'), '+/=', '-_'), w."termsText", min(j."termsAcceptedAt")
  FROM "workshop" w JOIN "job" j ON j."termsAcceptedAt" >= w."updatedAt"
  WHERE w."termsText" <> '' GROUP BY w."termsText";
UPDATE "job" j SET "termsId" = t."id"
FROM "workshop" w JOIN "terms_text" t ON t."text" = w."termsText"
WHERE j."termsAcceptedAt" >= w."updatedAt";
