-- CreateTable
CREATE TABLE "Shop" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "name" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "defaultTolerance" REAL NOT NULL DEFAULT 3,
    "inputsVersion" INTEGER NOT NULL DEFAULT 0,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CHECK (length("name") > 0),
    CHECK (length("timeZone") > 0),
    CHECK ("defaultTolerance" > 0),
    CHECK ("inputsVersion" >= 0)
);

-- CreateTable
CREATE TABLE "Person" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "active" BOOLEAN NOT NULL DEFAULT true,
    CONSTRAINT "Person_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("code") > 0),
    CHECK ("role" IN ('technician', 'trainer', 'manager'))
);

-- CreateTable
CREATE TABLE "Gauge" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "tag" TEXT NOT NULL,
    "kind" TEXT,
    "fixedMark" REAL,
    "state" TEXT NOT NULL DEFAULT 'in-service',
    "verifiedAt" DATETIME,
    CONSTRAINT "Gauge_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("tag") > 0),
    CHECK ("kind" IN ('tram', 'digital-tram', 'tracking', 'centering', 'strut', 'tape')),
    CHECK ("state" IN ('in-service', 'out-of-service', 'retired')),
    CHECK ("fixedMark" BETWEEN 0 AND 100000)
);

-- CreateTable
CREATE TABLE "GaugeVerification" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "gaugeId" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,
    "error" REAL,
    "passed" BOOLEAN NOT NULL,
    "personId" INTEGER,
    "note" TEXT,
    CONSTRAINT "GaugeVerification_shopId_gaugeId_fkey" FOREIGN KEY ("shopId", "gaugeId") REFERENCES "Gauge" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "GaugeVerification_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("error" BETWEEN -100000 AND 100000)
);

-- CreateTable
CREATE TABLE "Sheet" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "name" TEXT,
    CONSTRAINT "Sheet_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("name") > 0)
);

-- CreateTable
CREATE TABLE "SheetPoint" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "sheetId" INTEGER NOT NULL,
    "letter" TEXT NOT NULL,
    "side" TEXT NOT NULL,
    "description" TEXT,
    "section" TEXT,
    "station" REAL,
    "zero" BOOLEAN NOT NULL DEFAULT false,
    "halfWidth" REAL,
    CONSTRAINT "SheetPoint_sheetId_fkey" FOREIGN KEY ("sheetId") REFERENCES "Sheet" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CHECK (length("letter") > 0),
    CHECK ("side" IN ('', 'L', 'R')),
    CHECK ("section" IN ('front', 'center', 'rear')),
    CHECK ("station" BETWEEN -100000 AND 100000),
    CHECK ("halfWidth" BETWEEN 0 AND 100000)
);

-- CreateTable
CREATE TABLE "Dimension" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "sheetId" INTEGER NOT NULL,
    "quantity" TEXT NOT NULL,
    "point" TEXT NOT NULL,
    "side" TEXT NOT NULL,
    "section" TEXT,
    "station" REAL,
    "zero" BOOLEAN NOT NULL,
    "nominal" REAL NOT NULL,
    "tolerance" REAL NOT NULL,
    CONSTRAINT "Dimension_sheetId_fkey" FOREIGN KEY ("sheetId") REFERENCES "Sheet" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CHECK (length("point") > 0),
    CHECK ("quantity" IN ('length', 'height', 'centerline')),
    CHECK ("side" IN ('', 'L', 'R')),
    CHECK (("quantity" = 'height') = ("side" <> '')),
    CHECK ("section" IN ('front', 'center', 'rear')),
    CHECK ("station" BETWEEN -100000 AND 100000),
    CHECK ("quantity" = 'length' OR "station" IS NOT NULL),
    CHECK ("nominal" BETWEEN -100000 AND 100000),
    CHECK ("tolerance" BETWEEN 0 AND 100000)
);

-- CreateTable
CREATE TABLE "Job" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "number" TEXT NOT NULL,
    "sheetId" INTEGER NOT NULL,
    "searchText" TEXT NOT NULL,
    "openedAt" DATETIME NOT NULL,
    "lastReadAt" DATETIME NOT NULL,
    "lastStage" TEXT NOT NULL,
    "lastAttempt" INTEGER NOT NULL,
    "technicianId" INTEGER NOT NULL,
    "roundCount" INTEGER NOT NULL,
    "setupCount" INTEGER NOT NULL,
    "readingCount" INTEGER NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Job_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Job_shopId_sheetId_fkey" FOREIGN KEY ("shopId", "sheetId") REFERENCES "Sheet" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Job_shopId_technicianId_fkey" FOREIGN KEY ("shopId", "technicianId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("number") > 0),
    CHECK ("lastStage" IN ('before', 'after')),
    CHECK ("lastAttempt" >= 1),
    CHECK ("roundCount" >= 1),
    CHECK ("setupCount" >= 1),
    CHECK ("readingCount" >= 1),
    CHECK ("lastReadAt" >= "openedAt")
);

-- CreateTable
CREATE TABLE "JobTechnician" (
    "jobId" INTEGER NOT NULL,
    "technicianId" INTEGER NOT NULL,
    "firstAt" DATETIME NOT NULL,

    PRIMARY KEY ("jobId", "technicianId"),
    CONSTRAINT "JobTechnician_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "JobTechnician_technicianId_fkey" FOREIGN KEY ("technicianId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
) WITHOUT ROWID;

-- CreateTable
CREATE TABLE "Round" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "jobId" INTEGER NOT NULL,
    "stage" TEXT NOT NULL,
    "attempt" INTEGER NOT NULL,
    "clearance" REAL,
    "technicianId" INTEGER NOT NULL,
    "startedAt" DATETIME NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Round_shopId_jobId_fkey" FOREIGN KEY ("shopId", "jobId") REFERENCES "Job" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Round_shopId_technicianId_fkey" FOREIGN KEY ("shopId", "technicianId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("stage" IN ('before', 'after')),
    CHECK ("attempt" >= 1),
    CHECK ("clearance" BETWEEN -100000 AND 100000)
);

-- CreateTable
CREATE TABLE "Setup" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "jobId" INTEGER NOT NULL,
    "roundId" INTEGER NOT NULL,
    "label" TEXT NOT NULL,
    "technicianId" INTEGER NOT NULL,
    "gaugeId" INTEGER NOT NULL,
    "hungAt" DATETIME NOT NULL,
    CONSTRAINT "Setup_shopId_jobId_fkey" FOREIGN KEY ("shopId", "jobId") REFERENCES "Job" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Setup_jobId_roundId_fkey" FOREIGN KEY ("jobId", "roundId") REFERENCES "Round" ("jobId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Setup_shopId_technicianId_fkey" FOREIGN KEY ("shopId", "technicianId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Setup_shopId_gaugeId_fkey" FOREIGN KEY ("shopId", "gaugeId") REFERENCES "Gauge" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("label") > 0)
);

-- CreateTable
CREATE TABLE "Observation" (
    "setupId" INTEGER NOT NULL,
    "dimensionId" INTEGER NOT NULL,
    "n" INTEGER NOT NULL,
    "mean" REAL NOT NULL,
    "deviation" REAL NOT NULL,
    "ss" REAL NOT NULL,
    "takenAt" DATETIME NOT NULL,
    "cause" TEXT,

    PRIMARY KEY ("setupId", "dimensionId"),
    CONSTRAINT "Observation_setupId_fkey" FOREIGN KEY ("setupId") REFERENCES "Setup" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Observation_dimensionId_fkey" FOREIGN KEY ("dimensionId") REFERENCES "Dimension" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("n" >= 1),
    CHECK ("mean" BETWEEN -100000 AND 100000),
    CHECK ("deviation" BETWEEN -100000 AND 100000),
    CHECK ("ss" >= 0),
    CHECK ("n" > 1 OR "ss" = 0),
    CHECK ("cause" IN ('neither', 'gauge', 'body', 'both'))
) WITHOUT ROWID;

-- CreateTable
CREATE TABLE "Reading" (
    "setupId" INTEGER NOT NULL,
    "dimensionId" INTEGER NOT NULL,
    "repeat" INTEGER NOT NULL,
    "value" REAL NOT NULL,
    "takenAt" DATETIME NOT NULL,
    "fileId" INTEGER NOT NULL,
    "line" INTEGER NOT NULL,

    PRIMARY KEY ("setupId", "dimensionId", "repeat"),
    CONSTRAINT "Reading_setupId_dimensionId_fkey" FOREIGN KEY ("setupId", "dimensionId") REFERENCES "Observation" ("setupId", "dimensionId") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Reading_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "LoadedFile" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("repeat" >= 1),
    CHECK ("value" BETWEEN -100000 AND 100000),
    CHECK ("line" >= 1)
) WITHOUT ROWID;

-- CreateTable
CREATE TABLE "RecheckOutcome" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "setupId" INTEGER NOT NULL,
    "side" TEXT NOT NULL,
    "cause" TEXT NOT NULL,
    "personId" INTEGER,
    "at" DATETIME NOT NULL,
    "note" TEXT,
    CONSTRAINT "RecheckOutcome_shopId_setupId_fkey" FOREIGN KEY ("shopId", "setupId") REFERENCES "Setup" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "RecheckOutcome_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("side" IN ('', 'L', 'R')),
    CHECK ("cause" IN ('neither', 'gauge', 'body', 'both'))
);

-- CreateTable
CREATE TABLE "LoadedFile" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "lines" INTEGER NOT NULL,
    "added" INTEGER NOT NULL,
    "alreadyThere" INTEGER NOT NULL,
    "loadedAt" DATETIME NOT NULL,
    CONSTRAINT "LoadedFile_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("sha256") = 64),
    CHECK ("lines" >= 0),
    CHECK ("added" >= 0),
    CHECK ("alreadyThere" >= 0)
);

-- CreateTable
CREATE TABLE "JobOutcome" (
    "jobId" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "jobVersion" INTEGER NOT NULL,
    "right" BOOLEAN,
    "technicianId" INTEGER,
    "at" DATETIME,
    "month" TEXT,
    "controlled" INTEGER NOT NULL,
    "out" INTEGER NOT NULL,
    "frontControlled" INTEGER NOT NULL,
    "frontOut" INTEGER NOT NULL,
    "centerControlled" INTEGER NOT NULL,
    "centerOut" INTEGER NOT NULL,
    "rearControlled" INTEGER NOT NULL,
    "rearOut" INTEGER NOT NULL,
    CONSTRAINT "JobOutcome_shopId_jobId_fkey" FOREIGN KEY ("shopId", "jobId") REFERENCES "Job" ("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "JobOutcome_shopId_technicianId_fkey" FOREIGN KEY ("shopId", "technicianId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("out" >= 0),
    CHECK ("controlled" >= "out"),
    CHECK ("frontControlled" >= "frontOut" AND "centerControlled" >= "centerOut" AND "rearControlled" >= "rearOut"),
    CHECK ("right" IS NULL OR "controlled" > 0)
);

-- CreateTable
CREATE TABLE "ShopFit" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "inputsVersion" INTEGER NOT NULL,
    "parameters" JSONB NOT NULL,
    "figures" JSONB NOT NULL,
    "fittedAt" DATETIME NOT NULL,
    CONSTRAINT "ShopFit_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("inputsVersion" >= 0)
);

-- CreateTable
CREATE TABLE "RoundVerdict" (
    "roundId" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "fitId" INTEGER NOT NULL,
    "roundVersion" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,
    "decidable" BOOLEAN NOT NULL,
    "why" TEXT,
    "pZeroMisset" REAL NOT NULL,
    "maxGauge" REAL NOT NULL,
    "document" JSONB NOT NULL,
    CONSTRAINT "RoundVerdict_shopId_roundId_fkey" FOREIGN KEY ("shopId", "roundId") REFERENCES "Round" ("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "RoundVerdict_shopId_fitId_fkey" FOREIGN KEY ("shopId", "fitId") REFERENCES "ShopFit" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("pZeroMisset" BETWEEN 0 AND 1),
    CHECK ("maxGauge" BETWEEN 0 AND 1.000001)
);

-- CreateTable
CREATE TABLE "HeightVerdict" (
    "setupId" INTEGER NOT NULL,
    "dimensionId" INTEGER NOT NULL,
    "roundId" INTEGER NOT NULL,
    "deviation" REAL NOT NULL,
    "pNeither" REAL NOT NULL,
    "pGauge" REAL NOT NULL,
    "pBody" REAL NOT NULL,
    "pBoth" REAL NOT NULL,
    "misset" REAL NOT NULL,
    "body" REAL NOT NULL,
    "signature" TEXT,

    PRIMARY KEY ("setupId", "dimensionId"),
    CONSTRAINT "HeightVerdict_setupId_dimensionId_fkey" FOREIGN KEY ("setupId", "dimensionId") REFERENCES "Observation" ("setupId", "dimensionId") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "HeightVerdict_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "RoundVerdict" ("roundId") ON DELETE CASCADE ON UPDATE CASCADE,
    CHECK ("pNeither" BETWEEN 0 AND 1.000001),
    CHECK ("pGauge" BETWEEN 0 AND 1.000001),
    CHECK ("pBody" BETWEEN 0 AND 1.000001),
    CHECK ("pBoth" BETWEEN 0 AND 1.000001),
    CHECK (abs("pNeither" + "pGauge" + "pBody" + "pBoth" - 1) < 0.000001)
) WITHOUT ROWID;

-- CreateIndex
CREATE UNIQUE INDEX "Shop_name_key" ON "Shop"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Person_shopId_code_key" ON "Person"("shopId", "code");

-- CreateIndex
CREATE UNIQUE INDEX "Person_shopId_id_key" ON "Person"("shopId", "id");

-- CreateIndex
CREATE UNIQUE INDEX "Gauge_shopId_tag_key" ON "Gauge"("shopId", "tag");

-- CreateIndex
CREATE UNIQUE INDEX "Gauge_shopId_id_key" ON "Gauge"("shopId", "id");

-- CreateIndex
CREATE UNIQUE INDEX "GaugeVerification_shopId_gaugeId_at_key" ON "GaugeVerification"("shopId", "gaugeId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "Sheet_shopId_name_key" ON "Sheet"("shopId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Sheet_shopId_id_key" ON "Sheet"("shopId", "id");

-- CreateIndex
CREATE UNIQUE INDEX "SheetPoint_sheetId_letter_side_key" ON "SheetPoint"("sheetId", "letter", "side");

-- CreateIndex
CREATE UNIQUE INDEX "Dimension_sheetId_quantity_point_side_key" ON "Dimension"("sheetId", "quantity", "point", "side");

-- CreateIndex
CREATE INDEX "Job_shopId_openedAt_idx" ON "Job"("shopId", "openedAt");

-- CreateIndex
CREATE INDEX "Job_shopId_sheetId_idx" ON "Job"("shopId", "sheetId");

-- CreateIndex
CREATE INDEX "Job_shopId_lastStage_openedAt_idx" ON "Job"("shopId", "lastStage", "openedAt");

-- CreateIndex
CREATE INDEX "Job_shopId_technicianId_idx" ON "Job"("shopId", "technicianId");

-- CreateIndex
CREATE UNIQUE INDEX "Job_shopId_number_key" ON "Job"("shopId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Job_shopId_id_key" ON "Job"("shopId", "id");

-- CreateIndex
CREATE INDEX "JobTechnician_technicianId_idx" ON "JobTechnician"("technicianId");

-- CreateIndex
CREATE UNIQUE INDEX "Round_jobId_stage_attempt_key" ON "Round"("jobId", "stage", "attempt");

-- CreateIndex
CREATE UNIQUE INDEX "Round_shopId_id_key" ON "Round"("shopId", "id");

-- CreateIndex
CREATE UNIQUE INDEX "Round_jobId_id_key" ON "Round"("jobId", "id");

-- CreateIndex
CREATE INDEX "Setup_roundId_idx" ON "Setup"("roundId");

-- CreateIndex
CREATE INDEX "Setup_shopId_technicianId_hungAt_idx" ON "Setup"("shopId", "technicianId", "hungAt");

-- CreateIndex
CREATE INDEX "Setup_shopId_gaugeId_hungAt_idx" ON "Setup"("shopId", "gaugeId", "hungAt");

-- CreateIndex
CREATE UNIQUE INDEX "Setup_jobId_label_key" ON "Setup"("jobId", "label");

-- CreateIndex
CREATE UNIQUE INDEX "Setup_shopId_id_key" ON "Setup"("shopId", "id");

-- CreateIndex
CREATE INDEX "Observation_dimensionId_idx" ON "Observation"("dimensionId");

-- CreateIndex
CREATE INDEX "RecheckOutcome_setupId_side_idx" ON "RecheckOutcome"("setupId", "side");

-- CreateIndex
CREATE INDEX "RecheckOutcome_shopId_at_idx" ON "RecheckOutcome"("shopId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "LoadedFile_shopId_sha256_key" ON "LoadedFile"("shopId", "sha256");

-- CreateIndex
CREATE INDEX "JobOutcome_shopId_right_idx" ON "JobOutcome"("shopId", "right");

-- CreateIndex
CREATE INDEX "JobOutcome_shopId_month_idx" ON "JobOutcome"("shopId", "month");

-- CreateIndex
CREATE INDEX "JobOutcome_shopId_technicianId_idx" ON "JobOutcome"("shopId", "technicianId");

-- CreateIndex
CREATE UNIQUE INDEX "JobOutcome_shopId_jobId_key" ON "JobOutcome"("shopId", "jobId");

-- CreateIndex
CREATE UNIQUE INDEX "ShopFit_shopId_id_key" ON "ShopFit"("shopId", "id");

-- CreateIndex
CREATE INDEX "RoundVerdict_shopId_at_idx" ON "RoundVerdict"("shopId", "at");

-- CreateIndex
CREATE INDEX "RoundVerdict_shopId_fitId_idx" ON "RoundVerdict"("shopId", "fitId");

-- CreateIndex
CREATE UNIQUE INDEX "RoundVerdict_shopId_roundId_key" ON "RoundVerdict"("shopId", "roundId");

-- CreateIndex
CREATE INDEX "HeightVerdict_roundId_idx" ON "HeightVerdict"("roundId");
