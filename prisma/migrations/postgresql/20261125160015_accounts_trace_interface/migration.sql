-- AlterTable
ALTER TABLE "Shop" ADD COLUMN     "demo" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "Person" ADD COLUMN     "removedAt" TIMESTAMP(3);

-- AlterTable
ALTER TABLE "GaugeVerification" ADD COLUMN     "kind" TEXT COLLATE "C" NOT NULL DEFAULT 'looked-at',
ADD COLUMN     "reference" DOUBLE PRECISION,
ADD COLUMN     "uncertainty" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "Observation" ADD COLUMN     "excluded" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "Reading" DROP CONSTRAINT "Reading_pkey",
ADD COLUMN     "enteredAt" TIMESTAMP(3),
ADD COLUMN     "excluded" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "personId" INTEGER,
ADD COLUMN     "reason" TEXT COLLATE "C",
ADD COLUMN     "revision" INTEGER NOT NULL DEFAULT 1,
ADD COLUMN     "shopId" INTEGER,
ALTER COLUMN "fileId" DROP NOT NULL,
ALTER COLUMN "line" DROP NOT NULL,
ADD CONSTRAINT "Reading_pkey" PRIMARY KEY ("setupId", "dimensionId", "repeat", "revision");

-- AlterTable
ALTER TABLE "JobOutcome" ADD COLUMN     "startLargest" DOUBLE PRECISION,
ADD COLUMN     "startOut" INTEGER,
ADD COLUMN     "startZone" TEXT COLLATE "C";

-- CreateTable
CREATE TABLE "HabitTally" (
    "jobId" INTEGER NOT NULL,
    "technicianId" INTEGER NOT NULL,
    "shopId" INTEGER NOT NULL,
    "jobVersion" INTEGER NOT NULL,
    "format" INTEGER NOT NULL,
    "month" TEXT COLLATE "C" NOT NULL,
    "document" JSONB NOT NULL,

    CONSTRAINT "HabitTally_pkey" PRIMARY KEY ("jobId","technicianId"),
    CHECK ("format" >= 1),
    CHECK (length("month") > 0)
);

-- CreateTable
CREATE TABLE "Trial" (
    "id" SERIAL NOT NULL,
    "shopId" INTEGER NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "plan" JSONB NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "closedAt" TIMESTAMP(3),

    CONSTRAINT "Trial_pkey" PRIMARY KEY ("id"),
    CHECK (length("name") > 0)
);

-- CreateTable
CREATE TABLE "TrialReading" (
    "trialId" INTEGER NOT NULL,
    "run" INTEGER NOT NULL,
    "repeat" INTEGER NOT NULL,
    "shopId" INTEGER NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,
    "personId" INTEGER NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "TrialReading_pkey" PRIMARY KEY ("trialId","run","repeat"),
    CHECK ("run" >= 1),
    CHECK ("repeat" >= 1),
    CHECK ("value" BETWEEN -100000 AND 100000)
);

-- CreateTable
CREATE TABLE "Trace" (
    "id" SERIAL NOT NULL,
    "shopId" INTEGER NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "personId" INTEGER,
    "via" TEXT COLLATE "C" NOT NULL,
    "action" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "subject" TEXT COLLATE "C" NOT NULL,
    "concernsId" INTEGER,
    "before" JSONB,
    "after" JSONB,
    "reason" TEXT COLLATE "C",

    CONSTRAINT "Trace_pkey" PRIMARY KEY ("id"),
    CHECK ("via" IN ('page', 'command', 'interface', 'program')),
    CHECK (length("action") > 0),
    CHECK (length("kind") > 0)
);

-- CreateTable
CREATE TABLE "ApiToken" (
    "id" SERIAL NOT NULL,
    "shopId" INTEGER NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "digest" TEXT COLLATE "C" NOT NULL,
    "scopes" TEXT COLLATE "C" NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3),
    "lastUsedAt" TIMESTAMP(3),
    "revokedAt" TIMESTAMP(3),

    CONSTRAINT "ApiToken_pkey" PRIMARY KEY ("id"),
    CHECK (length("name") > 0),
    CHECK (length("digest") = 64)
);

-- CreateTable
CREATE TABLE "ReportSchedule" (
    "shopId" INTEGER NOT NULL,
    "every" TEXT COLLATE "C" NOT NULL,
    "hour" INTEGER NOT NULL,
    "setAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "ReportSchedule_pkey" PRIMARY KEY ("shopId"),
    CHECK ("every" IN ('day', 'week', 'month')),
    CHECK ("hour" BETWEEN 0 AND 23)
);

-- CreateTable
CREATE TABLE "ScheduledReport" (
    "id" SERIAL NOT NULL,
    "shopId" INTEGER NOT NULL,
    "dueAt" TIMESTAMP(3) NOT NULL,
    "startedAt" TIMESTAMP(3) NOT NULL,
    "doneAt" TIMESTAMP(3),
    "failed" TEXT COLLATE "C",
    "document" JSONB,

    CONSTRAINT "ScheduledReport_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "User" (
    "id" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "email" TEXT COLLATE "C" NOT NULL,
    "emailVerified" BOOLEAN NOT NULL,
    "image" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "username" TEXT COLLATE "C",
    "displayUsername" TEXT COLLATE "C",
    "twoFactorEnabled" BOOLEAN DEFAULT false,
    "shopId" INTEGER NOT NULL,
    "personId" INTEGER NOT NULL,

    CONSTRAINT "User_pkey" PRIMARY KEY ("id"),
    CHECK (length("username") >= 3)
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT COLLATE "C" NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "token" TEXT COLLATE "C" NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "ipAddress" TEXT COLLATE "C",
    "userAgent" TEXT COLLATE "C",
    "userId" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Account" (
    "id" TEXT COLLATE "C" NOT NULL,
    "accountId" TEXT COLLATE "C" NOT NULL,
    "providerId" TEXT COLLATE "C" NOT NULL,
    "userId" TEXT COLLATE "C" NOT NULL,
    "accessToken" TEXT COLLATE "C",
    "refreshToken" TEXT COLLATE "C",
    "idToken" TEXT COLLATE "C",
    "accessTokenExpiresAt" TIMESTAMP(3),
    "refreshTokenExpiresAt" TIMESTAMP(3),
    "scope" TEXT COLLATE "C",
    "password" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Verification" (
    "id" TEXT COLLATE "C" NOT NULL,
    "identifier" TEXT COLLATE "C" NOT NULL,
    "value" TEXT COLLATE "C" NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TwoFactor" (
    "id" TEXT COLLATE "C" NOT NULL,
    "secret" TEXT COLLATE "C" NOT NULL,
    "backupCodes" TEXT COLLATE "C" NOT NULL,
    "userId" TEXT COLLATE "C" NOT NULL,
    "verified" BOOLEAN DEFAULT true,
    "failedVerificationCount" INTEGER DEFAULT 0,
    "lockedUntil" TIMESTAMP(3),

    CONSTRAINT "TwoFactor_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Attempt" (
    "key" TEXT COLLATE "C" NOT NULL,
    "points" INTEGER NOT NULL,
    "expire" TIMESTAMP(3),

    CONSTRAINT "Attempt_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "Invitation" (
    "id" SERIAL NOT NULL,
    "shopId" INTEGER NOT NULL,
    "personId" INTEGER NOT NULL,
    "digest" TEXT COLLATE "C" NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "usedAt" TIMESTAMP(3),

    CONSTRAINT "Invitation_pkey" PRIMARY KEY ("id"),
    CHECK (length("digest") = 64),
    CHECK ("expiresAt" > "createdAt")
);

-- CreateIndex
CREATE INDEX "HabitTally_shopId_technicianId_month_idx" ON "HabitTally"("shopId", "technicianId", "month");

-- CreateIndex
CREATE UNIQUE INDEX "Trial_shopId_name_key" ON "Trial"("shopId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Trial_shopId_id_key" ON "Trial"("shopId", "id");

-- CreateIndex
CREATE INDEX "Trace_shopId_id_idx" ON "Trace"("shopId", "id");

-- CreateIndex
CREATE INDEX "Trace_shopId_kind_subject_idx" ON "Trace"("shopId", "kind", "subject");

-- CreateIndex
CREATE INDEX "Trace_shopId_personId_idx" ON "Trace"("shopId", "personId");

-- CreateIndex
CREATE INDEX "Trace_shopId_concernsId_idx" ON "Trace"("shopId", "concernsId");

-- CreateIndex
CREATE UNIQUE INDEX "ApiToken_digest_key" ON "ApiToken"("digest");

-- CreateIndex
CREATE UNIQUE INDEX "ApiToken_shopId_name_key" ON "ApiToken"("shopId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "ScheduledReport_shopId_dueAt_key" ON "ScheduledReport"("shopId", "dueAt");

-- CreateIndex
CREATE UNIQUE INDEX "User_email_key" ON "User"("email");

-- CreateIndex
CREATE UNIQUE INDEX "User_username_key" ON "User"("username");

-- CreateIndex
CREATE UNIQUE INDEX "User_shopId_personId_key" ON "User"("shopId", "personId");

-- CreateIndex
CREATE UNIQUE INDEX "Session_token_key" ON "Session"("token");

-- CreateIndex
CREATE INDEX "Session_userId_idx" ON "Session"("userId");

-- CreateIndex
CREATE INDEX "Account_userId_idx" ON "Account"("userId");

-- CreateIndex
CREATE INDEX "Verification_identifier_idx" ON "Verification"("identifier");

-- CreateIndex
CREATE INDEX "TwoFactor_secret_idx" ON "TwoFactor"("secret");

-- CreateIndex
CREATE INDEX "TwoFactor_userId_idx" ON "TwoFactor"("userId");

-- CreateIndex
CREATE INDEX "Attempt_expire_idx" ON "Attempt"("expire");

-- CreateIndex
CREATE UNIQUE INDEX "Invitation_digest_key" ON "Invitation"("digest");

-- CreateIndex
CREATE INDEX "Invitation_shopId_personId_idx" ON "Invitation"("shopId", "personId");

-- AddForeignKey
ALTER TABLE "Reading" ADD CONSTRAINT "Reading_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HabitTally" ADD CONSTRAINT "HabitTally_shopId_jobId_fkey" FOREIGN KEY ("shopId", "jobId") REFERENCES "Job"("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HabitTally" ADD CONSTRAINT "HabitTally_shopId_technicianId_fkey" FOREIGN KEY ("shopId", "technicianId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Trial" ADD CONSTRAINT "Trial_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TrialReading" ADD CONSTRAINT "TrialReading_shopId_trialId_fkey" FOREIGN KEY ("shopId", "trialId") REFERENCES "Trial"("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TrialReading" ADD CONSTRAINT "TrialReading_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Trace" ADD CONSTRAINT "Trace_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Trace" ADD CONSTRAINT "Trace_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Trace" ADD CONSTRAINT "Trace_shopId_concernsId_fkey" FOREIGN KEY ("shopId", "concernsId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ApiToken" ADD CONSTRAINT "ApiToken_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReportSchedule" ADD CONSTRAINT "ReportSchedule_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ScheduledReport" ADD CONSTRAINT "ScheduledReport_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "User" ADD CONSTRAINT "User_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "User" ADD CONSTRAINT "User_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Session" ADD CONSTRAINT "Session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Account" ADD CONSTRAINT "Account_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TwoFactor" ADD CONSTRAINT "TwoFactor_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Invitation" ADD CONSTRAINT "Invitation_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Invitation" ADD CONSTRAINT "Invitation_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person"("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Checks of tables that were there before
ALTER TABLE "Observation" DROP CONSTRAINT "Observation_n_check",
    ADD CHECK ("n" >= 0),
    ADD CHECK ("excluded" >= 0);
ALTER TABLE "Reading" ADD CHECK ("revision" >= 1),
    ADD CHECK ("fileId" IS NOT NULL OR "personId" IS NOT NULL),
    ADD CHECK (("fileId" IS NULL) = ("line" IS NULL)),
    ADD CHECK (("personId" IS NULL) = ("shopId" IS NULL)),
    ADD CHECK ("revision" = 1 OR ("reason" IS NOT NULL AND length("reason") > 0 AND "personId" IS NOT NULL));
ALTER TABLE "GaugeVerification" ADD CHECK ("kind" IN ('reference-length', 'check-standard', 'looked-at', 'reported-dropped')),
    ADD CHECK ("reference" BETWEEN -100000 AND 100000),
    ADD CHECK ("uncertainty" BETWEEN 0 AND 1000);
ALTER TABLE "JobOutcome" ADD CHECK ("startOut" >= 0),
    ADD CHECK ("startLargest" BETWEEN 0 AND 100000);

-- Append-only
CREATE OR REPLACE FUNCTION "Reading_only_added"() RETURNS trigger AS $$ BEGIN RAISE EXCEPTION 'rows of Reading are only ever added'; END $$ LANGUAGE plpgsql;
CREATE OR REPLACE TRIGGER "Reading_no_change" BEFORE UPDATE OR DELETE ON "Reading" FOR EACH ROW EXECUTE FUNCTION "Reading_only_added"();
CREATE OR REPLACE FUNCTION "Trace_only_added"() RETURNS trigger AS $$ BEGIN RAISE EXCEPTION 'rows of Trace are only ever added'; END $$ LANGUAGE plpgsql;
CREATE OR REPLACE TRIGGER "Trace_no_change" BEFORE UPDATE OR DELETE ON "Trace" FOR EACH ROW EXECUTE FUNCTION "Trace_only_added"();
