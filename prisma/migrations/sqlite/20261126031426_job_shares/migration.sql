-- DropTable
PRAGMA foreign_keys=off;
DROP TABLE "HabitTally";
PRAGMA foreign_keys=on;

-- CreateTable
CREATE TABLE "JobShare" (
    "jobId" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "fitId" INTEGER NOT NULL,
    "jobVersion" INTEGER NOT NULL,
    "madeBy" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    CONSTRAINT "JobShare_shopId_jobId_fkey" FOREIGN KEY ("shopId", "jobId") REFERENCES "Job" ("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "JobShare_shopId_fitId_fkey" FOREIGN KEY ("shopId", "fitId") REFERENCES "ShopFit" ("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE,
    CHECK ("jobVersion" >= 1),
    CHECK (length("madeBy") > 0)
);

-- CreateIndex
CREATE INDEX "JobShare_shopId_fitId_idx" ON "JobShare"("shopId", "fitId");

-- CreateIndex
CREATE UNIQUE INDEX "JobShare_shopId_jobId_key" ON "JobShare"("shopId", "jobId");
