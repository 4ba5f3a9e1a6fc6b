-- CreateTable
CREATE TABLE "work_entry" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "minutes" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "work_entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "part" (
    "id" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "term" TEXT,
    "reorderAt" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "part_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "lot" (
    "id" TEXT NOT NULL,
    "partId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "supplier" TEXT NOT NULL,
    "receivedOn" DATE NOT NULL,
    "received" INTEGER NOT NULL,
    "inStock" INTEGER NOT NULL,
    "unitCostMinor" INTEGER NOT NULL,

    CONSTRAINT "lot_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "part_use" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "unitCostMinor" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "part_use_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "check_entry" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "checkId" TEXT NOT NULL,
    "isPassed" BOOLEAN NOT NULL,
    "reading" DOUBLE PRECISION,
    "choice" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "check_entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "family" (
    "id" TEXT NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "family_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "model" (
    "id" TEXT NOT NULL,
    "familyId" TEXT NOT NULL,
    "slug" TEXT NOT NULL,
    "maker" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "aliases" TEXT[],
    "serialPattern" TEXT,
    "serialRule" TEXT NOT NULL DEFAULT 'none',
    "serialExample" TEXT NOT NULL DEFAULT '',
    "serialPlace" TEXT NOT NULL DEFAULT '',
    "battery" TEXT NOT NULL DEFAULT 'none',
    "batteryWh" DOUBLE PRECISION,
    "isMainsPowered" BOOLEAN NOT NULL DEFAULT false,
    "weightGrams" INTEGER NOT NULL DEFAULT 0,
    "accessories" TEXT[],
    "isListed" BOOLEAN NOT NULL DEFAULT true,

    CONSTRAINT "model_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "repair" (
    "id" TEXT NOT NULL,
    "modelId" TEXT NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    "priceMinor" INTEGER NOT NULL,
    "taxCategory" TEXT NOT NULL DEFAULT 'S',
    "taxRateBps" INTEGER NOT NULL,
    "minutes" INTEGER NOT NULL,
    "workingDays" INTEGER NOT NULL,
    "symptoms" TEXT[],
    "policyId" TEXT NOT NULL,
    "isListed" BOOLEAN NOT NULL DEFAULT true,

    CONSTRAINT "repair_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "policy" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,

    CONSTRAINT "policy_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "policy_version" (
    "id" TEXT NOT NULL,
    "policyId" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "startEvent" TEXT NOT NULL,
    "workTerm" TEXT,
    "partsTerm" TEXT,
    "exclusions" TEXT[],
    "renewedMinimum" TEXT,
    "heldRule" TEXT NOT NULL,
    "rollLastDay" BOOLEAN NOT NULL DEFAULT true,
    "graceDays" INTEGER NOT NULL DEFAULT 0,
    "transferable" BOOLEAN NOT NULL DEFAULT true,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "policy_version_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "check_sheet" (
    "id" TEXT NOT NULL,
    "repairId" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "check_sheet_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "check_item" (
    "id" TEXT NOT NULL,
    "sheetId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "help" TEXT NOT NULL DEFAULT '',
    "unit" TEXT,
    "low" DOUBLE PRECISION,
    "high" DOUBLE PRECISION,
    "choices" TEXT[],
    "passing" TEXT[],
    "lesson" TEXT,
    "caution" TEXT,

    CONSTRAINT "check_item_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "customer" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "phone" TEXT NOT NULL DEFAULT '',
    "addressLines" TEXT[],
    "postcode" TEXT NOT NULL,
    "town" TEXT NOT NULL,
    "country" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "customer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "booking_draft" (
    "id" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "repairId" TEXT NOT NULL,
    "answers" JSONB NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,
    "jobId" TEXT,

    CONSTRAINT "booking_draft_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job" (
    "id" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "customerId" TEXT NOT NULL,
    "modelId" TEXT NOT NULL,
    "repairId" TEXT NOT NULL,
    "sheetId" TEXT NOT NULL,
    "serialTyped" TEXT NOT NULL,
    "serialKey" TEXT NOT NULL,
    "problem" TEXT NOT NULL,
    "history" TEXT[],
    "batteryAnswer" TEXT NOT NULL,
    "dataAnswer" TEXT NOT NULL,
    "termsAcceptedAt" TIMESTAMPTZ(3) NOT NULL,
    "bookedAt" TIMESTAMPTZ(3) NOT NULL,
    "arrivedAt" TIMESTAMPTZ(3),
    "readyAt" TIMESTAMPTZ(3),
    "sentBackAt" TIMESTAMPTZ(3),
    "closedAt" TIMESTAMPTZ(3),
    "promisedOn" DATE,
    "arrivedSerial" TEXT,
    "serialComparison" TEXT,
    "isSerialSettled" BOOLEAN NOT NULL DEFAULT false,
    "inboundReference" TEXT NOT NULL DEFAULT '',
    "carrier" TEXT NOT NULL DEFAULT '',
    "carrierReference" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "job_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "accessory" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "isTold" BOOLEAN NOT NULL,
    "isArrived" BOOLEAN,

    CONSTRAINT "accessory_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job_event" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "actorKind" TEXT NOT NULL,
    "actorId" TEXT,
    "fromStage" TEXT,
    "toStage" TEXT,
    "data" JSONB NOT NULL,

    CONSTRAINT "job_event_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "private_link" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "nonce" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "revokedAt" TIMESTAMPTZ(3),

    CONSTRAINT "private_link_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "finding" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "finding_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "photo" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "findingId" TEXT,
    "purpose" TEXT NOT NULL,
    "caption" TEXT NOT NULL DEFAULT '',
    "fileKey" TEXT NOT NULL,
    "thumbKey" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT,

    CONSTRAINT "photo_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "message" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "author" TEXT NOT NULL,
    "userId" TEXT,
    "text" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "readAt" TIMESTAMPTZ(3),

    CONSTRAINT "message_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "mail" (
    "id" TEXT NOT NULL,
    "template" TEXT NOT NULL,
    "toAddress" TEXT NOT NULL,
    "jobId" TEXT,
    "data" JSONB NOT NULL,
    "messageId" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'queued',
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "lastError" TEXT,
    "queuedAt" TIMESTAMPTZ(3) NOT NULL,
    "claimedAt" TIMESTAMPTZ(3),
    "sentAt" TIMESTAMPTZ(3),

    CONSTRAINT "mail_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "quote" (
    "id" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "currency" TEXT NOT NULL,

    CONSTRAINT "quote_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "quote_revision" (
    "id" TEXT NOT NULL,
    "quoteId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "isGross" BOOLEAN NOT NULL,
    "reason" TEXT NOT NULL,
    "onYes" TEXT NOT NULL,
    "onNo" TEXT NOT NULL,
    "issuedAt" TIMESTAMPTZ(3) NOT NULL,
    "validUntil" DATE NOT NULL,
    "decidedAt" TIMESTAMPTZ(3),
    "decidedBy" TEXT,
    "agreedText" TEXT,
    "netMinor" INTEGER NOT NULL,
    "taxMinor" INTEGER NOT NULL,
    "grossMinor" INTEGER NOT NULL,

    CONSTRAINT "quote_revision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "quote_line" (
    "id" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "amountMinor" INTEGER NOT NULL,
    "taxCategory" TEXT NOT NULL,
    "taxRateBps" INTEGER NOT NULL,

    CONSTRAINT "quote_line_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "payment" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "amountMinor" INTEGER NOT NULL,
    "currency" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "reference" TEXT NOT NULL DEFAULT '',
    "receivedOn" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "payment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "auth_user" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "emailVerified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "twoFactorEnabled" BOOLEAN DEFAULT false,
    "role" TEXT NOT NULL DEFAULT 'front',
    "initials" TEXT NOT NULL DEFAULT '',
    "isActive" BOOLEAN NOT NULL DEFAULT true,

    CONSTRAINT "auth_user_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "auth_session" (
    "id" TEXT NOT NULL,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "token" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "ipAddress" TEXT,
    "userAgent" TEXT,
    "userId" TEXT NOT NULL,

    CONSTRAINT "auth_session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "auth_account" (
    "id" TEXT NOT NULL,
    "accountId" TEXT NOT NULL,
    "providerId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "accessToken" TEXT,
    "refreshToken" TEXT,
    "idToken" TEXT,
    "accessTokenExpiresAt" TIMESTAMPTZ(3),
    "refreshTokenExpiresAt" TIMESTAMPTZ(3),
    "scope" TEXT,
    "password" TEXT,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "auth_account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "auth_verification" (
    "id" TEXT NOT NULL,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "auth_verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "auth_two_factor" (
    "id" TEXT NOT NULL,
    "secret" TEXT NOT NULL,
    "backupCodes" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "verified" BOOLEAN NOT NULL DEFAULT true,
    "failedVerificationCount" INTEGER NOT NULL DEFAULT 0,
    "lockedUntil" TIMESTAMPTZ(3),

    CONSTRAINT "auth_two_factor_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "auth_rate_limit" (
    "id" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "lastRequest" BIGINT NOT NULL,

    CONSTRAINT "auth_rate_limit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "attempt" (
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "resetAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "attempt_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "certificate" (
    "id" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "jobId" TEXT NOT NULL,
    "policyVersionId" TEXT NOT NULL,
    "modelName" TEXT NOT NULL,
    "serialTyped" TEXT NOT NULL,
    "serialKey" TEXT NOT NULL,
    "issuedAt" TIMESTAMPTZ(3) NOT NULL,
    "issuedOn" DATE NOT NULL,
    "endsOn" DATE NOT NULL,
    "supersededAt" TIMESTAMPTZ(3),
    "keyId" TEXT NOT NULL,
    "signature" TEXT NOT NULL,
    "fileKey" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,

    CONSTRAINT "certificate_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "certificate_line" (
    "id" TEXT NOT NULL,
    "certificateId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "symptoms" TEXT[],
    "term" TEXT NOT NULL,
    "startsOn" DATE NOT NULL,
    "renewedUntil" DATE,
    "endsOn" DATE NOT NULL,
    "lotId" TEXT,

    CONSTRAINT "certificate_line_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "held_interval" (
    "id" TEXT NOT NULL,
    "certificateNumber" TEXT NOT NULL,
    "claimNumber" TEXT NOT NULL,
    "fromDay" DATE NOT NULL,
    "toDay" DATE NOT NULL,

    CONSTRAINT "held_interval_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "claim" (
    "id" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "certificateId" TEXT NOT NULL,
    "certificateNumber" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "openedOn" DATE NOT NULL,
    "openedAt" TIMESTAMPTZ(3) NOT NULL,
    "symptom" TEXT NOT NULL,
    "details" TEXT NOT NULL,
    "preliminary" JSONB NOT NULL,
    "isLate" BOOLEAN NOT NULL DEFAULT false,
    "cause" TEXT,
    "alsoFound" TEXT,
    "ruling" TEXT,
    "isEvidenceClear" BOOLEAN,
    "reasonText" TEXT,
    "ruledAt" TIMESTAMPTZ(3),
    "ruledBy" TEXT,
    "secondLookAt" TIMESTAMPTZ(3),
    "secondLookBy" TEXT,
    "contestedAt" TIMESTAMPTZ(3),
    "contestText" TEXT,
    "lesson" TEXT,
    "costMinutes" INTEGER,
    "costPartsMinor" INTEGER,
    "costPostageMinor" INTEGER,
    "closedAt" TIMESTAMPTZ(3),

    CONSTRAINT "claim_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "inspection_entry" (
    "id" TEXT NOT NULL,
    "claimId" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "answer" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "photoId" TEXT,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "inspection_entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "workshop" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "tagline" TEXT NOT NULL,
    "addressLines" TEXT[],
    "postcode" TEXT NOT NULL,
    "town" TEXT NOT NULL,
    "country" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "locale" TEXT NOT NULL,
    "paper" TEXT NOT NULL DEFAULT 'A4',
    "pricesIncludeTax" BOOLEAN NOT NULL DEFAULT true,
    "taxNumber" TEXT NOT NULL DEFAULT '',
    "holidayCountry" TEXT NOT NULL,
    "holidayRegion" TEXT NOT NULL DEFAULT '',
    "returnFeeMinor" INTEGER NOT NULL,
    "inspectionFeeMinor" INTEGER NOT NULL,
    "labourRateMinor" INTEGER NOT NULL,
    "capacityMinutesDay" INTEGER NOT NULL DEFAULT 360,
    "approvalDays" INTEGER NOT NULL DEFAULT 30,
    "paymentText" TEXT NOT NULL,
    "packingText" TEXT[],
    "termsText" TEXT NOT NULL,
    "privacyText" TEXT NOT NULL,
    "territory" TEXT NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "workshop_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "closing_day" (
    "day" DATE NOT NULL,
    "name" TEXT NOT NULL,

    CONSTRAINT "closing_day_pkey" PRIMARY KEY ("day")
);

-- CreateTable
CREATE TABLE "signing_key" (
    "id" TEXT NOT NULL,
    "publicKey" TEXT NOT NULL,
    "privateKeySealed" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "retiredAt" TIMESTAMPTZ(3),

    CONSTRAINT "signing_key_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "work_entry_jobId_idx" ON "work_entry"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "part_code_key" ON "part"("code");

-- CreateIndex
CREATE UNIQUE INDEX "lot_partId_code_key" ON "lot"("partId", "code");

-- CreateIndex
CREATE INDEX "part_use_jobId_idx" ON "part_use"("jobId");

-- CreateIndex
CREATE INDEX "part_use_lotId_idx" ON "part_use"("lotId");

-- CreateIndex
CREATE INDEX "check_entry_jobId_checkId_idx" ON "check_entry"("jobId", "checkId");

-- CreateIndex
CREATE INDEX "check_entry_checkId_idx" ON "check_entry"("checkId");

-- CreateIndex
CREATE UNIQUE INDEX "family_slug_key" ON "family"("slug");

-- CreateIndex
CREATE UNIQUE INDEX "model_slug_key" ON "model"("slug");

-- CreateIndex
CREATE INDEX "model_familyId_idx" ON "model"("familyId");

-- CreateIndex
CREATE INDEX "repair_policyId_idx" ON "repair"("policyId");

-- CreateIndex
CREATE UNIQUE INDEX "repair_modelId_slug_key" ON "repair"("modelId", "slug");

-- CreateIndex
CREATE UNIQUE INDEX "policy_name_key" ON "policy"("name");

-- CreateIndex
CREATE UNIQUE INDEX "policy_version_policyId_version_key" ON "policy_version"("policyId", "version");

-- CreateIndex
CREATE UNIQUE INDEX "check_sheet_repairId_version_key" ON "check_sheet"("repairId", "version");

-- CreateIndex
CREATE UNIQUE INDEX "check_item_sheetId_position_key" ON "check_item"("sheetId", "position");

-- CreateIndex
CREATE INDEX "customer_email_idx" ON "customer"("email");

-- CreateIndex
CREATE UNIQUE INDEX "booking_draft_tokenHash_key" ON "booking_draft"("tokenHash");

-- CreateIndex
CREATE UNIQUE INDEX "booking_draft_jobId_key" ON "booking_draft"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "job_number_key" ON "job"("number");

-- CreateIndex
CREATE INDEX "job_stage_promisedOn_idx" ON "job"("stage", "promisedOn");

-- CreateIndex
CREATE INDEX "job_serialKey_idx" ON "job"("serialKey");

-- CreateIndex
CREATE INDEX "job_customerId_idx" ON "job"("customerId");

-- CreateIndex
CREATE INDEX "job_bookedAt_idx" ON "job"("bookedAt");

-- CreateIndex
CREATE INDEX "job_modelId_idx" ON "job"("modelId");

-- CreateIndex
CREATE INDEX "job_repairId_idx" ON "job"("repairId");

-- CreateIndex
CREATE UNIQUE INDEX "accessory_jobId_name_key" ON "accessory"("jobId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "job_event_jobId_version_key" ON "job_event"("jobId", "version");

-- CreateIndex
CREATE UNIQUE INDEX "private_link_tokenHash_key" ON "private_link"("tokenHash");

-- CreateIndex
CREATE INDEX "private_link_jobId_idx" ON "private_link"("jobId");

-- CreateIndex
CREATE INDEX "finding_jobId_idx" ON "finding"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "photo_fileKey_key" ON "photo"("fileKey");

-- CreateIndex
CREATE UNIQUE INDEX "photo_thumbKey_key" ON "photo"("thumbKey");

-- CreateIndex
CREATE INDEX "photo_jobId_idx" ON "photo"("jobId");

-- CreateIndex
CREATE INDEX "message_jobId_idx" ON "message"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "mail_messageId_key" ON "mail"("messageId");

-- CreateIndex
CREATE INDEX "mail_state_queuedAt_idx" ON "mail"("state", "queuedAt");

-- CreateIndex
CREATE INDEX "mail_jobId_idx" ON "mail"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "quote_number_key" ON "quote"("number");

-- CreateIndex
CREATE UNIQUE INDEX "quote_jobId_key" ON "quote"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "quote_revision_quoteId_revision_key" ON "quote_revision"("quoteId", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "quote_line_revisionId_position_key" ON "quote_line"("revisionId", "position");

-- CreateIndex
CREATE INDEX "payment_jobId_idx" ON "payment"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "auth_user_email_key" ON "auth_user"("email");

-- CreateIndex
CREATE UNIQUE INDEX "auth_session_token_key" ON "auth_session"("token");

-- CreateIndex
CREATE INDEX "auth_session_userId_idx" ON "auth_session"("userId");

-- CreateIndex
CREATE INDEX "auth_account_userId_idx" ON "auth_account"("userId");

-- CreateIndex
CREATE INDEX "auth_verification_identifier_idx" ON "auth_verification"("identifier");

-- CreateIndex
CREATE INDEX "auth_two_factor_secret_idx" ON "auth_two_factor"("secret");

-- CreateIndex
CREATE INDEX "auth_two_factor_userId_idx" ON "auth_two_factor"("userId");

-- CreateIndex
CREATE UNIQUE INDEX "auth_rate_limit_key_key" ON "auth_rate_limit"("key");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_fileKey_key" ON "certificate"("fileKey");

-- CreateIndex
CREATE INDEX "certificate_serialKey_idx" ON "certificate"("serialKey");

-- CreateIndex
CREATE INDEX "certificate_policyVersionId_idx" ON "certificate"("policyVersionId");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_number_revision_key" ON "certificate"("number", "revision");

-- CreateIndex
CREATE INDEX "certificate_line_lotId_idx" ON "certificate_line"("lotId");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_line_certificateId_position_key" ON "certificate_line"("certificateId", "position");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_line_certificateId_key_key" ON "certificate_line"("certificateId", "key");

-- CreateIndex
CREATE UNIQUE INDEX "held_interval_claimNumber_key" ON "held_interval"("claimNumber");

-- CreateIndex
CREATE INDEX "held_interval_certificateNumber_idx" ON "held_interval"("certificateNumber");

-- CreateIndex
CREATE UNIQUE INDEX "claim_number_key" ON "claim"("number");

-- CreateIndex
CREATE UNIQUE INDEX "claim_jobId_key" ON "claim"("jobId");

-- CreateIndex
CREATE INDEX "claim_certificateNumber_idx" ON "claim"("certificateNumber");

-- CreateIndex
CREATE INDEX "claim_certificateId_idx" ON "claim"("certificateId");

-- CreateIndex
CREATE INDEX "claim_state_idx" ON "claim"("state");

-- CreateIndex
CREATE UNIQUE INDEX "inspection_entry_claimId_item_key" ON "inspection_entry"("claimId", "item");

-- AddForeignKey
ALTER TABLE "work_entry" ADD CONSTRAINT "work_entry_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_partId_fkey" FOREIGN KEY ("partId") REFERENCES "part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_use" ADD CONSTRAINT "part_use_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_use" ADD CONSTRAINT "part_use_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "lot"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_entry" ADD CONSTRAINT "check_entry_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_entry" ADD CONSTRAINT "check_entry_checkId_fkey" FOREIGN KEY ("checkId") REFERENCES "check_item"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "model" ADD CONSTRAINT "model_familyId_fkey" FOREIGN KEY ("familyId") REFERENCES "family"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "repair" ADD CONSTRAINT "repair_modelId_fkey" FOREIGN KEY ("modelId") REFERENCES "model"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "repair" ADD CONSTRAINT "repair_policyId_fkey" FOREIGN KEY ("policyId") REFERENCES "policy"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "policy_version" ADD CONSTRAINT "policy_version_policyId_fkey" FOREIGN KEY ("policyId") REFERENCES "policy"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_sheet" ADD CONSTRAINT "check_sheet_repairId_fkey" FOREIGN KEY ("repairId") REFERENCES "repair"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_item" ADD CONSTRAINT "check_item_sheetId_fkey" FOREIGN KEY ("sheetId") REFERENCES "check_sheet"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "booking_draft" ADD CONSTRAINT "booking_draft_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_modelId_fkey" FOREIGN KEY ("modelId") REFERENCES "model"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_repairId_fkey" FOREIGN KEY ("repairId") REFERENCES "repair"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_sheetId_fkey" FOREIGN KEY ("sheetId") REFERENCES "check_sheet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "accessory" ADD CONSTRAINT "accessory_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_event" ADD CONSTRAINT "job_event_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "private_link" ADD CONSTRAINT "private_link_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding" ADD CONSTRAINT "finding_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_findingId_fkey" FOREIGN KEY ("findingId") REFERENCES "finding"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "message" ADD CONSTRAINT "message_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mail" ADD CONSTRAINT "mail_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote" ADD CONSTRAINT "quote_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote_revision" ADD CONSTRAINT "quote_revision_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "quote"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote_line" ADD CONSTRAINT "quote_line_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "quote_revision"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "payment" ADD CONSTRAINT "payment_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "auth_session" ADD CONSTRAINT "auth_session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "auth_user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "auth_account" ADD CONSTRAINT "auth_account_userId_fkey" FOREIGN KEY ("userId") REFERENCES "auth_user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "auth_two_factor" ADD CONSTRAINT "auth_two_factor_userId_fkey" FOREIGN KEY ("userId") REFERENCES "auth_user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "certificate" ADD CONSTRAINT "certificate_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "certificate" ADD CONSTRAINT "certificate_policyVersionId_fkey" FOREIGN KEY ("policyVersionId") REFERENCES "policy_version"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "certificate_line" ADD CONSTRAINT "certificate_line_certificateId_fkey" FOREIGN KEY ("certificateId") REFERENCES "certificate"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "claim" ADD CONSTRAINT "claim_certificateId_fkey" FOREIGN KEY ("certificateId") REFERENCES "certificate"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "claim" ADD CONSTRAINT "claim_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inspection_entry" ADD CONSTRAINT "inspection_entry_claimId_fkey" FOREIGN KEY ("claimId") REFERENCES "claim"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inspection_entry" ADD CONSTRAINT "inspection_entry_photoId_fkey" FOREIGN KEY ("photoId") REFERENCES "photo"("id") ON DELETE SET NULL ON UPDATE CASCADE;
