-- DropIndex
DROP INDEX "Dimension_sheetId_quantity_point_side_key";

-- AlterTable
ALTER TABLE "Dimension" ADD COLUMN     "named" DOUBLE PRECISION;
UPDATE "Dimension" SET "named" = CASE WHEN "quantity" = 'length' THEN "nominal" ELSE 0 END;
ALTER TABLE "Dimension" ALTER COLUMN "named" SET NOT NULL,
    ADD CHECK ("named" = CASE WHEN "quantity" = 'length' THEN "nominal" ELSE 0 END);

-- CreateIndex
CREATE UNIQUE INDEX "Dimension_sheetId_quantity_point_side_named_key" ON "Dimension"("sheetId", "quantity", "point", "side", "named");
