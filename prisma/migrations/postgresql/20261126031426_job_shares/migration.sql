-- DropForeignKey
ALTER TABLE "HabitTally" DROP CONSTRAINT "HabitTally_shopId_jobId_fkey";

-- DropForeignKey
ALTER TABLE "HabitTally" DROP CONSTRAINT "HabitTally_shopId_technicianId_fkey";

-- DropTable
DROP TABLE "HabitTally";

-- CreateTable
CREATE TABLE "JobShare" (
    "jobId" INTEGER NOT NULL,
    "shopId" INTEGER NOT NULL,
    "fitId" INTEGER NOT NULL,
    "jobVersion" INTEGER NOT NULL,
    "madeBy" TEXT COLLATE "C" NOT NULL,
    "document" JSONB NOT NULL,

    CONSTRAINT "JobShare_pkey" PRIMARY KEY ("jobId"),
    CHECK ("jobVersion" >= 1),
    CHECK (length("madeBy") > 0)
);

-- CreateIndex
CREATE INDEX "JobShare_shopId_fitId_idx" ON "JobShare"("shopId", "fitId");

-- CreateIndex
CREATE UNIQUE INDEX "JobShare_shopId_jobId_key" ON "JobShare"("shopId", "jobId");

-- AddForeignKey
ALTER TABLE "JobShare" ADD CONSTRAINT "JobShare_shopId_jobId_fkey" FOREIGN KEY ("shopId", "jobId") REFERENCES "Job"("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobShare" ADD CONSTRAINT "JobShare_shopId_fitId_fkey" FOREIGN KEY ("shopId", "fitId") REFERENCES "ShopFit"("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE;
