-- CreateTable
CREATE TABLE "FitAnswer" (
    "shopId" INTEGER NOT NULL,
    "fitId" INTEGER NOT NULL,
    "question" TEXT COLLATE "C" NOT NULL,
    "document" JSONB NOT NULL,

    CONSTRAINT "FitAnswer_pkey" PRIMARY KEY ("fitId","question"),
    CHECK (length("question") > 0)
);

-- AddForeignKey
ALTER TABLE "FitAnswer" ADD CONSTRAINT "FitAnswer_shopId_fitId_fkey" FOREIGN KEY ("shopId", "fitId") REFERENCES "ShopFit"("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE;
