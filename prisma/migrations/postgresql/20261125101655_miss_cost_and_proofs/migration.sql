-- CreateTable
CREATE TABLE "MissCost" (
    "id" SERIAL NOT NULL,
    "shopId" INTEGER NOT NULL,
    "cost" DOUBLE PRECISION NOT NULL,
    "personId" INTEGER,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "MissCost_pkey" PRIMARY KEY ("id"),
    CHECK ("cost" BETWEEN 3 AND 99)
);

-- CreateTable
CREATE TABLE "RoundProof" (
    "roundId" INTEGER NOT NULL,
    "shopId" INTEGER NOT NULL,
    "roundVersion" INTEGER NOT NULL,
    "format" INTEGER NOT NULL,
    "ahead" BOOLEAN NOT NULL,

    CONSTRAINT "RoundProof_pkey" PRIMARY KEY ("roundId"),
    CHECK ("format" >= 1)
);

-- CreateTable
CREATE TABLE "HeightProof" (
    "setupId" INTEGER NOT NULL,
    "dimensionId" INTEGER NOT NULL,
    "roundId" INTEGER NOT NULL,
    "month" TEXT NOT NULL,
    "pNeither" DOUBLE PRECISION NOT NULL,
    "pGauge" DOUBLE PRECISION NOT NULL,
    "pBody" DOUBLE PRECISION NOT NULL,
    "pBoth" DOUBLE PRECISION NOT NULL,
    "proved" TEXT,
    "by" TEXT NOT NULL,

    CONSTRAINT "HeightProof_pkey" PRIMARY KEY ("setupId","dimensionId"),
    CHECK (length("month") > 0),
    CHECK ("pNeither" BETWEEN 0 AND 1.000001),
    CHECK ("pGauge" BETWEEN 0 AND 1.000001),
    CHECK ("pBody" BETWEEN 0 AND 1.000001),
    CHECK ("pBoth" BETWEEN 0 AND 1.000001),
    CHECK (abs("pNeither" + "pGauge" + "pBody" + "pBoth" - 1) < 0.000001),
    CHECK ("proved" IN ('neither', 'gauge', 'body', 'both')),
    CHECK ("by" IN ('rehang', 'recorded'))
);

-- CreateIndex
CREATE INDEX "MissCost_shopId_idx" ON "MissCost"("shopId");

-- CreateIndex
CREATE UNIQUE INDEX "RoundProof_shopId_roundId_key" ON "RoundProof"("shopId", "roundId");

-- CreateIndex
CREATE INDEX "HeightProof_roundId_idx" ON "HeightProof"("roundId");

-- AddForeignKey
ALTER TABLE "MissCost" ADD CONSTRAINT "MissCost_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MissCost" ADD CONSTRAINT "MissCost_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person"("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoundProof" ADD CONSTRAINT "RoundProof_shopId_roundId_fkey" FOREIGN KEY ("shopId", "roundId") REFERENCES "Round"("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HeightProof" ADD CONSTRAINT "HeightProof_setupId_dimensionId_fkey" FOREIGN KEY ("setupId", "dimensionId") REFERENCES "Observation"("setupId", "dimensionId") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HeightProof" ADD CONSTRAINT "HeightProof_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "RoundProof"("roundId") ON DELETE CASCADE ON UPDATE CASCADE;
