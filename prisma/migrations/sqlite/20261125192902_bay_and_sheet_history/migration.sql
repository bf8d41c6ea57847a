-- AlterTable
ALTER TABLE "SheetPoint" ADD COLUMN "feature" TEXT;

-- CreateTable
CREATE TABLE "SheetRevision" (
    "sheetId" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "shopId" INTEGER NOT NULL,
    "document" JSONB NOT NULL,
    "reason" TEXT,
    "personId" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,

    PRIMARY KEY ("sheetId", "revision"),
    CONSTRAINT "SheetRevision_shopId_sheetId_fkey" FOREIGN KEY ("shopId", "sheetId") REFERENCES "Sheet" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SheetRevision_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("revision" >= 1)
) WITHOUT ROWID;

-- CreateTable
CREATE TABLE "BayRound" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "job" TEXT NOT NULL,
    "sheetId" INTEGER NOT NULL,
    "stage" TEXT NOT NULL,
    "attempt" INTEGER NOT NULL,
    "clearance" REAL NOT NULL,
    "personId" INTEGER NOT NULL,
    "startedAt" DATETIME NOT NULL,
    "finishedAt" DATETIME,
    CONSTRAINT "BayRound_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "BayRound_shopId_sheetId_fkey" FOREIGN KEY ("shopId", "sheetId") REFERENCES "Sheet" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "BayRound_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("job") > 0),
    CHECK ("stage" IN ('before', 'after')),
    CHECK ("attempt" >= 1),
    CHECK ("clearance" BETWEEN -100000 AND 100000)
);

-- CreateTable
CREATE TABLE "BayEntry" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "bayRoundId" INTEGER NOT NULL,
    "key" TEXT NOT NULL,
    "device" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "personId" INTEGER NOT NULL,
    "handId" INTEGER,
    "kind" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "at" DATETIME NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    "conflict" TEXT,
    CONSTRAINT "BayEntry_shopId_bayRoundId_fkey" FOREIGN KEY ("shopId", "bayRoundId") REFERENCES "BayRound" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "BayEntry_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "BayEntry_shopId_handId_fkey" FOREIGN KEY ("shopId", "handId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("key") > 0),
    CHECK (length("device") > 0),
    CHECK ("sequence" >= 1),
    CHECK ("kind" IN ('equipment', 'hang', 'read', 'correct', 'skip', 'resume', 'settle', 'finish'))
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Sheet" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "name" TEXT,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "retiredAt" DATETIME,
    CONSTRAINT "Sheet_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("name") > 0)
);
INSERT INTO "new_Sheet" ("id", "name", "shopId") SELECT "id", "name", "shopId" FROM "Sheet";
DROP TABLE "Sheet";
ALTER TABLE "new_Sheet" RENAME TO "Sheet";
CREATE UNIQUE INDEX "Sheet_shopId_name_key" ON "Sheet"("shopId", "name");
CREATE UNIQUE INDEX "Sheet_shopId_id_key" ON "Sheet"("shopId", "id");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "SheetRevision_shopId_personId_idx" ON "SheetRevision"("shopId", "personId");

-- CreateIndex
CREATE INDEX "BayRound_shopId_finishedAt_idx" ON "BayRound"("shopId", "finishedAt");

-- CreateIndex
CREATE INDEX "BayRound_shopId_personId_idx" ON "BayRound"("shopId", "personId");

-- CreateIndex
CREATE UNIQUE INDEX "BayRound_shopId_job_stage_attempt_key" ON "BayRound"("shopId", "job", "stage", "attempt");

-- CreateIndex
CREATE UNIQUE INDEX "BayRound_shopId_id_key" ON "BayRound"("shopId", "id");

-- CreateIndex
CREATE INDEX "BayEntry_bayRoundId_id_idx" ON "BayEntry"("bayRoundId", "id");

-- CreateIndex
CREATE INDEX "BayEntry_shopId_personId_idx" ON "BayEntry"("shopId", "personId");

-- CreateIndex
CREATE INDEX "BayEntry_shopId_handId_idx" ON "BayEntry"("shopId", "handId");

-- CreateIndex
CREATE UNIQUE INDEX "BayEntry_bayRoundId_key_key" ON "BayEntry"("bayRoundId", "key");

-- CreateIndex
CREATE UNIQUE INDEX "BayEntry_bayRoundId_device_sequence_key" ON "BayEntry"("bayRoundId", "device", "sequence");

-- CreateIndex
CREATE INDEX "Observation_excluded_idx" ON "Observation"("excluded");

-- Append-only
CREATE TRIGGER "SheetRevision_no_update" BEFORE UPDATE ON "SheetRevision" BEGIN SELECT RAISE(ABORT, 'rows of SheetRevision are only ever added'); END;
CREATE TRIGGER "SheetRevision_no_delete" BEFORE DELETE ON "SheetRevision" BEGIN SELECT RAISE(ABORT, 'rows of SheetRevision are only ever added'); END;
CREATE TRIGGER "BayEntry_no_update" BEFORE UPDATE ON "BayEntry" BEGIN SELECT RAISE(ABORT, 'rows of BayEntry are only ever added'); END;
CREATE TRIGGER "BayEntry_no_delete" BEFORE DELETE ON "BayEntry" BEGIN SELECT RAISE(ABORT, 'rows of BayEntry are only ever added'); END;
