-- DropIndex
DROP INDEX "Observation_excluded_idx";

-- Readings that are excluded are few: an index of them alone.
CREATE INDEX "Observation_excluded" ON "Observation"("setupId") WHERE "excluded" > 0;
