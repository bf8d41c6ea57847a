-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Dimension" (
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
    "named" REAL NOT NULL,
    CONSTRAINT "Dimension_sheetId_fkey" FOREIGN KEY ("sheetId") REFERENCES "Sheet" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CHECK (length("point") > 0),
    CHECK ("quantity" IN ('length', 'height', 'centerline')),
    CHECK ("side" IN ('', 'L', 'R')),
    CHECK (("quantity" = 'height') = ("side" <> '')),
    CHECK ("section" IN ('front', 'center', 'rear')),
    CHECK ("station" BETWEEN -100000 AND 100000),
    CHECK ("quantity" = 'length' OR "station" IS NOT NULL),
    CHECK ("nominal" BETWEEN -100000 AND 100000),
    CHECK ("tolerance" BETWEEN 0 AND 100000),
    CHECK ("named" = CASE WHEN "quantity" = 'length' THEN "nominal" ELSE 0 END)
);
INSERT INTO "new_Dimension" ("id", "nominal", "point", "quantity", "section", "sheetId", "side", "station", "tolerance", "zero", "named")
SELECT "id", "nominal", "point", "quantity", "section", "sheetId", "side", "station", "tolerance", "zero", CASE WHEN "quantity" = 'length' THEN "nominal" ELSE 0 END FROM "Dimension";
DROP TABLE "Dimension";
ALTER TABLE "new_Dimension" RENAME TO "Dimension";
CREATE UNIQUE INDEX "Dimension_sheetId_quantity_point_side_named_key" ON "Dimension"("sheetId", "quantity", "point", "side", "named");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
