-- CreateTable
CREATE TABLE "part_order_move" (
    "id" TEXT NOT NULL,
    "orderId" TEXT NOT NULL,
    "fromDay" DATE,
    "toDay" DATE,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "part_order_move_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "part_order_move_orderId_idx" ON "part_order_move"("orderId");

-- AddForeignKey
ALTER TABLE "part_order_move" ADD CONSTRAINT "part_order_move_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "part_order"("id") ON DELETE CASCADE ON UPDATE CASCADE;
