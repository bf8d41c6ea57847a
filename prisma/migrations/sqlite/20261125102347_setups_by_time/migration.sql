-- CreateIndex
CREATE INDEX "Setup_shopId_hungAt_idx" ON "Setup"("shopId", "hungAt");
