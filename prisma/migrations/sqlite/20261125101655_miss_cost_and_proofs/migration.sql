-- CreateTable
CREATE TABLE "MissCost" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "cost" REAL NOT NULL,
    "personId" INTEGER,
    "at" DATETIME NOT NULL,
    CONSTRAINT "MissCost_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "MissCost_shopId_personId_fkey" FOREIGN KEY ("shopId", "personId") REFERENCES "Person" ("shopId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("cost" BETWEEN 3 AND 99)
);

-- CreateTable
CREATE TABLE "RoundProof" (
    "roundId" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "shopId" INTEGER NOT NULL,
    "roundVersion" INTEGER NOT NULL,
    "format" INTEGER NOT NULL,
    "ahead" BOOLEAN NOT NULL,
    CONSTRAINT "RoundProof_shopId_roundId_fkey" FOREIGN KEY ("shopId", "roundId") REFERENCES "Round" ("shopId", "id") ON DELETE CASCADE ON UPDATE CASCADE,
    CHECK ("format" >= 1)
);

-- CreateTable
CREATE TABLE "HeightProof" (
    "setupId" INTEGER NOT NULL,
    "dimensionId" INTEGER NOT NULL,
    "roundId" INTEGER NOT NULL,
    "month" TEXT NOT NULL,
    "pNeither" REAL NOT NULL,
    "pGauge" REAL NOT NULL,
    "pBody" REAL NOT NULL,
    "pBoth" REAL NOT NULL,
    "proved" TEXT,
    "by" TEXT NOT NULL,

    PRIMARY KEY ("setupId", "dimensionId"),
    CONSTRAINT "HeightProof_setupId_dimensionId_fkey" FOREIGN KEY ("setupId", "dimensionId") REFERENCES "Observation" ("setupId", "dimensionId") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "HeightProof_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "RoundProof" ("roundId") ON DELETE CASCADE ON UPDATE CASCADE,
    CHECK (length("month") > 0),
    CHECK ("pNeither" BETWEEN 0 AND 1.000001),
    CHECK ("pGauge" BETWEEN 0 AND 1.000001),
    CHECK ("pBody" BETWEEN 0 AND 1.000001),
    CHECK ("pBoth" BETWEEN 0 AND 1.000001),
    CHECK (abs("pNeither" + "pGauge" + "pBody" + "pBoth" - 1) < 0.000001),
    CHECK ("proved" IN ('neither', 'gauge', 'body', 'both')),
    CHECK ("by" IN ('rehang', 'recorded'))
) WITHOUT ROWID;

-- CreateIndex
CREATE INDEX "MissCost_shopId_idx" ON "MissCost"("shopId");

-- CreateIndex
CREATE UNIQUE INDEX "RoundProof_shopId_roundId_key" ON "RoundProof"("shopId", "roundId");

-- CreateIndex
CREATE INDEX "HeightProof_roundId_idx" ON "HeightProof"("roundId");
