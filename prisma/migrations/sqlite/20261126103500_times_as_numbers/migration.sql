-- A time is kept as milliseconds since 1970 instead of a text of 29 letters, which took two fifths of a large shop's
-- file and of the time to load it. What a column is declared as stays: it is what tells a time from a number.

DROP INDEX "Setup_shopId_hungAt_idx";
DROP INDEX "Setup_shopId_technicianId_hungAt_idx";
DROP INDEX "Setup_shopId_gaugeId_hungAt_idx";
DROP TRIGGER "Reading_no_update";
DROP TRIGGER "Trace_no_update";
DROP TRIGGER "SheetRevision_no_update";
DROP TRIGGER "BayEntry_no_update";

UPDATE "Shop" SET "createdAt" = CAST(strftime('%s', "createdAt") AS INTEGER) * 1000 + CAST(substr("createdAt", 21, 3) AS INTEGER);
UPDATE "MissCost" SET "at" = CAST(strftime('%s', "at") AS INTEGER) * 1000 + CAST(substr("at", 21, 3) AS INTEGER);
UPDATE "Person" SET "removedAt" = CAST(strftime('%s', "removedAt") AS INTEGER) * 1000 + CAST(substr("removedAt", 21, 3) AS INTEGER);
UPDATE "Gauge" SET "verifiedAt" = CAST(strftime('%s', "verifiedAt") AS INTEGER) * 1000 + CAST(substr("verifiedAt", 21, 3) AS INTEGER);
UPDATE "GaugeVerification" SET "at" = CAST(strftime('%s', "at") AS INTEGER) * 1000 + CAST(substr("at", 21, 3) AS INTEGER);
UPDATE "Sheet" SET "retiredAt" = CAST(strftime('%s', "retiredAt") AS INTEGER) * 1000 + CAST(substr("retiredAt", 21, 3) AS INTEGER);
UPDATE "SheetRevision" SET "at" = CAST(strftime('%s', "at") AS INTEGER) * 1000 + CAST(substr("at", 21, 3) AS INTEGER);
UPDATE "BayRound" SET "startedAt" = CAST(strftime('%s', "startedAt") AS INTEGER) * 1000 + CAST(substr("startedAt", 21, 3) AS INTEGER),
  "finishedAt" = CAST(strftime('%s', "finishedAt") AS INTEGER) * 1000 + CAST(substr("finishedAt", 21, 3) AS INTEGER);
UPDATE "BayEntry" SET "at" = CAST(strftime('%s', "at") AS INTEGER) * 1000 + CAST(substr("at", 21, 3) AS INTEGER),
  "receivedAt" = CAST(strftime('%s', "receivedAt") AS INTEGER) * 1000 + CAST(substr("receivedAt", 21, 3) AS INTEGER);
UPDATE "Job" SET "openedAt" = CAST(strftime('%s', "openedAt") AS INTEGER) * 1000 + CAST(substr("openedAt", 21, 3) AS INTEGER),
  "lastReadAt" = CAST(strftime('%s', "lastReadAt") AS INTEGER) * 1000 + CAST(substr("lastReadAt", 21, 3) AS INTEGER);
UPDATE "JobTechnician" SET "firstAt" = CAST(strftime('%s', "firstAt") AS INTEGER) * 1000 + CAST(substr("firstAt", 21, 3) AS INTEGER);
UPDATE "Round" SET "startedAt" = CAST(strftime('%s', "startedAt") AS INTEGER) * 1000 + CAST(substr("startedAt", 21, 3) AS INTEGER);
UPDATE "Setup" SET "hungAt" = CAST(strftime('%s', "hungAt") AS INTEGER) * 1000 + CAST(substr("hungAt", 21, 3) AS INTEGER);
UPDATE "Observation" SET "takenAt" = CAST(strftime('%s', "takenAt") AS INTEGER) * 1000 + CAST(substr("takenAt", 21, 3) AS INTEGER);
UPDATE "Reading" SET "takenAt" = CAST(strftime('%s', "takenAt") AS INTEGER) * 1000 + CAST(substr("takenAt", 21, 3) AS INTEGER),
  "enteredAt" = CAST(strftime('%s', "enteredAt") AS INTEGER) * 1000 + CAST(substr("enteredAt", 21, 3) AS INTEGER);
UPDATE "RecheckOutcome" SET "at" = CAST(strftime('%s', "at") AS INTEGER) * 1000 + CAST(substr("at", 21, 3) AS INTEGER);
UPDATE "LoadedFile" SET "loadedAt" = CAST(strftime('%s', "loadedAt") AS INTEGER) * 1000 + CAST(substr("loadedAt", 21, 3) AS INTEGER);
UPDATE "JobOutcome" SET "at" = CAST(strftime('%s', "at") AS INTEGER) * 1000 + CAST(substr("at", 21, 3) AS INTEGER);
UPDATE "ShopFit" SET "fittedAt" = CAST(strftime('%s', "fittedAt") AS INTEGER) * 1000 + CAST(substr("fittedAt", 21, 3) AS INTEGER);
UPDATE "RoundVerdict" SET "at" = CAST(strftime('%s', "at") AS INTEGER) * 1000 + CAST(substr("at", 21, 3) AS INTEGER);
UPDATE "Trial" SET "createdAt" = CAST(strftime('%s', "createdAt") AS INTEGER) * 1000 + CAST(substr("createdAt", 21, 3) AS INTEGER),
  "closedAt" = CAST(strftime('%s', "closedAt") AS INTEGER) * 1000 + CAST(substr("closedAt", 21, 3) AS INTEGER);
UPDATE "TrialReading" SET "at" = CAST(strftime('%s', "at") AS INTEGER) * 1000 + CAST(substr("at", 21, 3) AS INTEGER);
UPDATE "Trace" SET "at" = CAST(strftime('%s', "at") AS INTEGER) * 1000 + CAST(substr("at", 21, 3) AS INTEGER);
UPDATE "ApiToken" SET "createdAt" = CAST(strftime('%s', "createdAt") AS INTEGER) * 1000 + CAST(substr("createdAt", 21, 3) AS INTEGER),
  "expiresAt" = CAST(strftime('%s', "expiresAt") AS INTEGER) * 1000 + CAST(substr("expiresAt", 21, 3) AS INTEGER),
  "lastUsedAt" = CAST(strftime('%s', "lastUsedAt") AS INTEGER) * 1000 + CAST(substr("lastUsedAt", 21, 3) AS INTEGER),
  "revokedAt" = CAST(strftime('%s', "revokedAt") AS INTEGER) * 1000 + CAST(substr("revokedAt", 21, 3) AS INTEGER);
UPDATE "ReportSchedule" SET "setAt" = CAST(strftime('%s', "setAt") AS INTEGER) * 1000 + CAST(substr("setAt", 21, 3) AS INTEGER);
UPDATE "ScheduledReport" SET "dueAt" = CAST(strftime('%s', "dueAt") AS INTEGER) * 1000 + CAST(substr("dueAt", 21, 3) AS INTEGER),
  "startedAt" = CAST(strftime('%s', "startedAt") AS INTEGER) * 1000 + CAST(substr("startedAt", 21, 3) AS INTEGER),
  "doneAt" = CAST(strftime('%s', "doneAt") AS INTEGER) * 1000 + CAST(substr("doneAt", 21, 3) AS INTEGER);
UPDATE "User" SET "createdAt" = CAST(strftime('%s', "createdAt") AS INTEGER) * 1000 + CAST(substr("createdAt", 21, 3) AS INTEGER),
  "updatedAt" = CAST(strftime('%s', "updatedAt") AS INTEGER) * 1000 + CAST(substr("updatedAt", 21, 3) AS INTEGER);
UPDATE "Session" SET "expiresAt" = CAST(strftime('%s', "expiresAt") AS INTEGER) * 1000 + CAST(substr("expiresAt", 21, 3) AS INTEGER),
  "createdAt" = CAST(strftime('%s', "createdAt") AS INTEGER) * 1000 + CAST(substr("createdAt", 21, 3) AS INTEGER),
  "updatedAt" = CAST(strftime('%s', "updatedAt") AS INTEGER) * 1000 + CAST(substr("updatedAt", 21, 3) AS INTEGER);
UPDATE "Account" SET "accessTokenExpiresAt" = CAST(strftime('%s', "accessTokenExpiresAt") AS INTEGER) * 1000 + CAST(substr("accessTokenExpiresAt", 21, 3) AS INTEGER),
  "refreshTokenExpiresAt" = CAST(strftime('%s', "refreshTokenExpiresAt") AS INTEGER) * 1000 + CAST(substr("refreshTokenExpiresAt", 21, 3) AS INTEGER),
  "createdAt" = CAST(strftime('%s', "createdAt") AS INTEGER) * 1000 + CAST(substr("createdAt", 21, 3) AS INTEGER),
  "updatedAt" = CAST(strftime('%s', "updatedAt") AS INTEGER) * 1000 + CAST(substr("updatedAt", 21, 3) AS INTEGER);
UPDATE "Verification" SET "expiresAt" = CAST(strftime('%s', "expiresAt") AS INTEGER) * 1000 + CAST(substr("expiresAt", 21, 3) AS INTEGER),
  "createdAt" = CAST(strftime('%s', "createdAt") AS INTEGER) * 1000 + CAST(substr("createdAt", 21, 3) AS INTEGER),
  "updatedAt" = CAST(strftime('%s', "updatedAt") AS INTEGER) * 1000 + CAST(substr("updatedAt", 21, 3) AS INTEGER);
UPDATE "TwoFactor" SET "lockedUntil" = CAST(strftime('%s', "lockedUntil") AS INTEGER) * 1000 + CAST(substr("lockedUntil", 21, 3) AS INTEGER);
UPDATE "Attempt" SET "expire" = CAST(strftime('%s', "expire") AS INTEGER) * 1000 + CAST(substr("expire", 21, 3) AS INTEGER);
UPDATE "Invitation" SET "createdAt" = CAST(strftime('%s', "createdAt") AS INTEGER) * 1000 + CAST(substr("createdAt", 21, 3) AS INTEGER),
  "expiresAt" = CAST(strftime('%s', "expiresAt") AS INTEGER) * 1000 + CAST(substr("expiresAt", 21, 3) AS INTEGER),
  "usedAt" = CAST(strftime('%s', "usedAt") AS INTEGER) * 1000 + CAST(substr("usedAt", 21, 3) AS INTEGER);

CREATE TRIGGER "Reading_no_update" BEFORE UPDATE ON "Reading" BEGIN SELECT RAISE(ABORT, 'rows of Reading are only ever added'); END;
CREATE TRIGGER "Trace_no_update" BEFORE UPDATE ON "Trace" BEGIN SELECT RAISE(ABORT, 'rows of Trace are only ever added'); END;
CREATE TRIGGER "SheetRevision_no_update" BEFORE UPDATE ON "SheetRevision" BEGIN SELECT RAISE(ABORT, 'rows of SheetRevision are only ever added'); END;
CREATE TRIGGER "BayEntry_no_update" BEFORE UPDATE ON "BayEntry" BEGIN SELECT RAISE(ABORT, 'rows of BayEntry are only ever added'); END;

CREATE INDEX "Setup_shopId_hungAt_idx" ON "Setup"("shopId", "hungAt");
CREATE INDEX "Setup_shopId_technicianId_hungAt_idx" ON "Setup"("shopId", "technicianId", "hungAt");
CREATE INDEX "Setup_shopId_gaugeId_hungAt_idx" ON "Setup"("shopId", "gaugeId", "hungAt");

-- Readings that are excluded are few: an index of them alone.
DROP INDEX "Observation_excluded_idx";
CREATE INDEX "Observation_excluded" ON "Observation"("setupId") WHERE "excluded" > 0;
