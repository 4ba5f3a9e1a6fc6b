-- CreateIndex
CREATE INDEX "mail_bouncedAt_idx" ON "mail"("bouncedAt");

-- CreateIndex
CREATE INDEX "message_at_idx" ON "message"("at");
