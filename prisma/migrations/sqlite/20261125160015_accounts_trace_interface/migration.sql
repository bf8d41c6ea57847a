-- AlterTable
ALTER TABLE "Person" ADD COLUMN "removedAt" DATETIME;

-- AlterTable
ALTER TABLE "JobOutcome" ADD COLUMN "startLargest" REAL CHECK ("startLargest" BETWEEN 0 AND 100000);
ALTER TABLE "JobOutcome" ADD COLUMN "startOut" INTEGER CHECK ("startOut" >= 0);
ALTER TABLE "JobOutcome" ADD COLUMN "startZone" TEXT;

-- CreateTable
CREATE TABLE "HabitTally" (
    "jobId" INTEGER NOT NULL,
    "technicianId" INTEGER NOT NULL,
    "shopId" INTEGER NOT NULL,
    "jobVersion" INTEGER NOT NULL,
    "format" INTEGER NOT NULL,
    "month" TEXT NOT NULL,
    "document" JSONB NOT NULL,

    PRIMARY KEY ("jobId", "technicianId"),
    CONSTRAINT "HabitTally_shopId_jobId_fkey" FOREIGN KEY ("shopId", "jobId") REFERENCES "Job" ("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "HabitTally_shopId_technicianId_fkey" FOREIGN KEY ("shopId", "technicianId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("format" >= 1),
    CHECK (length("month") > 0)
) WITHOUT ROWID;

-- CreateTable
CREATE TABLE "Trial" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "plan" JSONB NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "closedAt" DATETIME,
    CONSTRAINT "Trial_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("name") > 0)
);

-- CreateTable
CREATE TABLE "TrialReading" (
    "trialId" INTEGER NOT NULL,
    "run" INTEGER NOT NULL,
    "repeat" INTEGER NOT NULL,
    "shopId" INTEGER NOT NULL,
    "value" REAL NOT NULL,
    "personId" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,

    PRIMARY KEY ("trialId", "run", "repeat"),
    CONSTRAINT "TrialReading_shopId_trialId_fkey" FOREIGN KEY ("shopId", "trialId") REFERENCES "Trial" ("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "TrialReading_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("run" >= 1),
    CHECK ("repeat" >= 1),
    CHECK ("value" BETWEEN -100000 AND 100000)
) WITHOUT ROWID;

-- CreateTable
CREATE TABLE "Trace" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,
    "personId" INTEGER,
    "via" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "concernsId" INTEGER,
    "before" JSONB,
    "after" JSONB,
    "reason" TEXT,
    CONSTRAINT "Trace_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Trace_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Trace_shopId_concernsId_fkey" FOREIGN KEY ("shopId", "concernsId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("via" IN ('page', 'command', 'interface', 'program')),
    CHECK (length("action") > 0),
    CHECK (length("kind") > 0)
);

-- CreateTable
CREATE TABLE "ApiToken" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "digest" TEXT NOT NULL,
    "scopes" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "expiresAt" DATETIME,
    "lastUsedAt" DATETIME,
    "revokedAt" DATETIME,
    CONSTRAINT "ApiToken_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("name") > 0),
    CHECK (length("digest") = 64)
);

-- CreateTable
CREATE TABLE "ReportSchedule" (
    "shopId" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "every" TEXT NOT NULL,
    "hour" INTEGER NOT NULL,
    "setAt" DATETIME NOT NULL,
    CONSTRAINT "ReportSchedule_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("every" IN ('day', 'week', 'month')),
    CHECK ("hour" BETWEEN 0 AND 23)
);

-- CreateTable
CREATE TABLE "ScheduledReport" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "dueAt" DATETIME NOT NULL,
    "startedAt" DATETIME NOT NULL,
    "doneAt" DATETIME,
    "failed" TEXT,
    "document" JSONB,
    CONSTRAINT "ScheduledReport_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "User" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "emailVerified" BOOLEAN NOT NULL,
    "image" TEXT,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL,
    "username" TEXT,
    "displayUsername" TEXT,
    "twoFactorEnabled" BOOLEAN DEFAULT false,
    "shopId" INTEGER NOT NULL,
    "personId" INTEGER NOT NULL,
    CONSTRAINT "User_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "User_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("username") >= 3)
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "expiresAt" DATETIME NOT NULL,
    "token" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL,
    "ipAddress" TEXT,
    "userAgent" TEXT,
    "userId" TEXT NOT NULL,
    CONSTRAINT "Session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Account" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "accountId" TEXT NOT NULL,
    "providerId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "accessToken" TEXT,
    "refreshToken" TEXT,
    "idToken" TEXT,
    "accessTokenExpiresAt" DATETIME,
    "refreshTokenExpiresAt" DATETIME,
    "scope" TEXT,
    "password" TEXT,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Account_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Verification" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "TwoFactor" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "secret" TEXT NOT NULL,
    "backupCodes" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "verified" BOOLEAN DEFAULT true,
    "failedVerificationCount" INTEGER DEFAULT 0,
    "lockedUntil" DATETIME,
    CONSTRAINT "TwoFactor_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Attempt" (
    "key" TEXT NOT NULL PRIMARY KEY,
    "points" INTEGER NOT NULL,
    "expire" DATETIME
);

-- CreateTable
CREATE TABLE "Invitation" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "personId" INTEGER NOT NULL,
    "digest" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "usedAt" DATETIME,
    CONSTRAINT "Invitation_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Invitation_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE,
    CHECK (length("digest") = 64),
    CHECK ("expiresAt" > "createdAt")
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Shop" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "name" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "defaultTolerance" REAL NOT NULL DEFAULT 3,
    "inputsVersion" INTEGER NOT NULL DEFAULT 0,
    "demo" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CHECK (length("name") > 0),
    CHECK (length("timeZone") > 0),
    CHECK ("defaultTolerance" > 0),
    CHECK ("inputsVersion" >= 0)
);
INSERT INTO "new_Shop" ("createdAt", "defaultTolerance", "id", "inputsVersion", "name", "timeZone") SELECT "createdAt", "defaultTolerance", "id", "inputsVersion", "name", "timeZone" FROM "Shop";
DROP TABLE "Shop";
ALTER TABLE "new_Shop" RENAME TO "Shop";
CREATE UNIQUE INDEX "Shop_name_key" ON "Shop"("name");
CREATE TABLE "new_GaugeVerification" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "gaugeId" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,
    "kind" TEXT NOT NULL DEFAULT 'looked-at',
    "reference" REAL,
    "uncertainty" REAL,
    "error" REAL,
    "passed" BOOLEAN NOT NULL,
    "personId" INTEGER,
    "note" TEXT,
    CONSTRAINT "GaugeVerification_shopId_gaugeId_fkey" FOREIGN KEY ("shopId", "gaugeId") REFERENCES "Gauge" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "GaugeVerification_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("kind" IN ('reference-length', 'check-standard', 'looked-at', 'reported-dropped')),
    CHECK ("reference" BETWEEN -100000 AND 100000),
    CHECK ("uncertainty" BETWEEN 0 AND 1000),
    CHECK ("error" BETWEEN -100000 AND 100000)
);
INSERT INTO "new_GaugeVerification" ("at", "error", "gaugeId", "id", "note", "passed", "personId", "shopId") SELECT "at", "error", "gaugeId", "id", "note", "passed", "personId", "shopId" FROM "GaugeVerification";
DROP TABLE "GaugeVerification";
ALTER TABLE "new_GaugeVerification" RENAME TO "GaugeVerification";
CREATE UNIQUE INDEX "GaugeVerification_shopId_gaugeId_at_key" ON "GaugeVerification"("shopId", "gaugeId", "at");
CREATE TABLE "new_Observation" (
    "setupId" INTEGER NOT NULL,
    "dimensionId" INTEGER NOT NULL,
    "n" INTEGER NOT NULL,
    "excluded" INTEGER NOT NULL DEFAULT 0,
    "mean" REAL NOT NULL,
    "deviation" REAL NOT NULL,
    "ss" REAL NOT NULL,
    "takenAt" DATETIME NOT NULL,
    "cause" TEXT,

    PRIMARY KEY ("setupId", "dimensionId"),
    CONSTRAINT "Observation_setupId_fkey" FOREIGN KEY ("setupId") REFERENCES "Setup" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Observation_dimensionId_fkey" FOREIGN KEY ("dimensionId") REFERENCES "Dimension" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("n" >= 0),
    CHECK ("excluded" >= 0),
    CHECK ("mean" BETWEEN -100000 AND 100000),
    CHECK ("deviation" BETWEEN -100000 AND 100000),
    CHECK ("ss" >= 0),
    CHECK ("n" > 1 OR "ss" = 0),
    CHECK ("cause" IN ('neither', 'gauge', 'body', 'both'))
) WITHOUT ROWID;
INSERT INTO "new_Observation" ("cause", "deviation", "dimensionId", "mean", "n", "setupId", "ss", "takenAt") SELECT "cause", "deviation", "dimensionId", "mean", "n", "setupId", "ss", "takenAt" FROM "Observation";
DROP TABLE "Observation";
ALTER TABLE "new_Observation" RENAME TO "Observation";
CREATE INDEX "Observation_dimensionId_idx" ON "Observation"("dimensionId");
CREATE TABLE "new_Reading" (
    "setupId" INTEGER NOT NULL,
    "dimensionId" INTEGER NOT NULL,
    "repeat" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "value" REAL NOT NULL,
    "takenAt" DATETIME NOT NULL,
    "excluded" BOOLEAN NOT NULL DEFAULT false,
    "reason" TEXT,
    "shopId" INTEGER,
    "personId" INTEGER,
    "enteredAt" DATETIME,
    "fileId" INTEGER,
    "line" INTEGER,

    PRIMARY KEY ("setupId", "dimensionId", "repeat", "revision"),
    CONSTRAINT "Reading_setupId_dimensionId_fkey" FOREIGN KEY ("setupId", "dimensionId") REFERENCES "Observation" ("setupId", "dimensionId") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Reading_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "LoadedFile" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Reading_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("repeat" >= 1),
    CHECK ("revision" >= 1),
    CHECK ("value" BETWEEN -100000 AND 100000),
    CHECK ("line" >= 1),
    CHECK ("fileId" IS NOT NULL OR "personId" IS NOT NULL),
    CHECK (("fileId" IS NULL) = ("line" IS NULL)),
    CHECK (("personId" IS NULL) = ("shopId" IS NULL)),
    CHECK ("revision" = 1 OR ("reason" IS NOT NULL AND length("reason") > 0 AND "personId" IS NOT NULL))
) WITHOUT ROWID;
INSERT INTO "new_Reading" ("dimensionId", "fileId", "line", "repeat", "setupId", "takenAt", "value") SELECT "dimensionId", "fileId", "line", "repeat", "setupId", "takenAt", "value" FROM "Reading";
DROP TABLE "Reading";
ALTER TABLE "new_Reading" RENAME TO "Reading";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

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

-- Append-only
CREATE TRIGGER "Reading_no_update" BEFORE UPDATE ON "Reading" BEGIN SELECT RAISE(ABORT, 'rows of Reading are only ever added'); END;
CREATE TRIGGER "Reading_no_delete" BEFORE DELETE ON "Reading" BEGIN SELECT RAISE(ABORT, 'rows of Reading are only ever added'); END;
CREATE TRIGGER "Trace_no_update" BEFORE UPDATE ON "Trace" BEGIN SELECT RAISE(ABORT, 'rows of Trace are only ever added'); END;
CREATE TRIGGER "Trace_no_delete" BEFORE DELETE ON "Trace" BEGIN SELECT RAISE(ABORT, 'rows of Trace are only ever added'); END;
