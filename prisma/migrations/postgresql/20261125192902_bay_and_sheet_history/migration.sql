-- AlterTable
ALTER TABLE "Sheet" ADD COLUMN     "retiredAt" TIMESTAMP(3),
ADD COLUMN     "revision" INTEGER NOT NULL DEFAULT 1;

-- AlterTable
ALTER TABLE "SheetPoint" ADD COLUMN     "feature" TEXT COLLATE "C";

-- CreateTable
CREATE TABLE "SheetRevision" (
    "sheetId" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "shopId" INTEGER NOT NULL,
    "document" JSONB NOT NULL,
    "reason" TEXT COLLATE "C",
    "personId" INTEGER NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "SheetRevision_pkey" PRIMARY KEY ("sheetId","revision"),
    CHECK ("revision" >= 1)
);

-- CreateTable
CREATE TABLE "BayRound" (
    "id" SERIAL NOT NULL,
    "shopId" INTEGER NOT NULL,
    "job" TEXT COLLATE "C" NOT NULL,
    "sheetId" INTEGER NOT NULL,
    "stage" TEXT COLLATE "C" NOT NULL,
    "attempt" INTEGER NOT NULL,
    "clearance" DOUBLE PRECISION NOT NULL,
    "personId" INTEGER NOT NULL,
    "startedAt" TIMESTAMP(3) NOT NULL,
    "finishedAt" TIMESTAMP(3),

    CONSTRAINT "BayRound_pkey" PRIMARY KEY ("id"),
    CHECK (length("job") > 0),
    CHECK ("stage" IN ('before', 'after')),
    CHECK ("attempt" >= 1),
    CHECK ("clearance" BETWEEN -100000 AND 100000)
);

-- CreateTable
CREATE TABLE "BayEntry" (
    "id" SERIAL NOT NULL,
    "shopId" INTEGER NOT NULL,
    "bayRoundId" INTEGER NOT NULL,
    "key" TEXT COLLATE "C" NOT NULL,
    "device" TEXT COLLATE "C" NOT NULL,
    "sequence" INTEGER NOT NULL,
    "personId" INTEGER NOT NULL,
    "handId" INTEGER,
    "kind" TEXT COLLATE "C" NOT NULL,
    "document" JSONB NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "receivedAt" TIMESTAMP(3) NOT NULL,
    "conflict" TEXT COLLATE "C",

    CONSTRAINT "BayEntry_pkey" PRIMARY KEY ("id"),
    CHECK (length("key") > 0),
    CHECK (length("device") > 0),
    CHECK ("sequence" >= 1),
    CHECK ("kind" IN ('equipment', 'hang', 'read', 'correct', 'skip', 'resume', 'settle', 'finish'))
);

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

-- AddForeignKey
ALTER TABLE "SheetRevision" ADD CONSTRAINT "SheetRevision_shopId_sheetId_fkey" FOREIGN KEY ("shopId", "sheetId") REFERENCES "Sheet"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SheetRevision" ADD CONSTRAINT "SheetRevision_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BayRound" ADD CONSTRAINT "BayRound_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BayRound" ADD CONSTRAINT "BayRound_shopId_sheetId_fkey" FOREIGN KEY ("shopId", "sheetId") REFERENCES "Sheet"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BayRound" ADD CONSTRAINT "BayRound_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BayEntry" ADD CONSTRAINT "BayEntry_shopId_bayRoundId_fkey" FOREIGN KEY ("shopId", "bayRoundId") REFERENCES "BayRound"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BayEntry" ADD CONSTRAINT "BayEntry_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BayEntry" ADD CONSTRAINT "BayEntry_shopId_handId_fkey" FOREIGN KEY ("shopId", "handId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Append-only
CREATE OR REPLACE FUNCTION "SheetRevision_only_added"() RETURNS trigger AS $$ BEGIN RAISE EXCEPTION 'rows of SheetRevision are only ever added'; END $$ LANGUAGE plpgsql;
CREATE OR REPLACE TRIGGER "SheetRevision_no_change" BEFORE UPDATE OR DELETE ON "SheetRevision" FOR EACH ROW EXECUTE FUNCTION "SheetRevision_only_added"();
CREATE OR REPLACE FUNCTION "BayEntry_only_added"() RETURNS trigger AS $$ BEGIN RAISE EXCEPTION 'rows of BayEntry are only ever added'; END $$ LANGUAGE plpgsql;
CREATE OR REPLACE TRIGGER "BayEntry_no_change" BEFORE UPDATE OR DELETE ON "BayEntry" FOR EACH ROW EXECUTE FUNCTION "BayEntry_only_added"();
