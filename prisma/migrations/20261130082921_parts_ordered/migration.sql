-- CreateTable
CREATE TABLE "part_order" (
    "id" TEXT NOT NULL,
    "partId" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "came" INTEGER NOT NULL DEFAULT 0,
    "supplier" TEXT NOT NULL,
    "orderedOn" DATE NOT NULL,
    "expectedOn" DATE,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,
    "endedAt" TIMESTAMPTZ(3),
    "endedById" TEXT,

    CONSTRAINT "part_order_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "part_order_partId_idx" ON "part_order"("partId");

-- AddForeignKey
ALTER TABLE "part_order" ADD CONSTRAINT "part_order_partId_fkey" FOREIGN KEY ("partId") REFERENCES "part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- More may come than was ordered, and some may never come.
ALTER TABLE "part_order" ADD CONSTRAINT "part_order_pieces" CHECK ("quantity" > 0 AND "came" >= 0);
