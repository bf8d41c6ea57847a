-- CreateTable
CREATE TABLE "FitAnswer" (
    "shopId" INTEGER NOT NULL,
    "fitId" INTEGER NOT NULL,
    "question" TEXT NOT NULL,
    "document" JSONB NOT NULL,

    PRIMARY KEY ("fitId", "question"),
    CONSTRAINT "FitAnswer_shopId_fitId_fkey" FOREIGN KEY ("shopId", "fitId") REFERENCES "ShopFit" ("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE,
    CHECK (length("question") > 0)
);
