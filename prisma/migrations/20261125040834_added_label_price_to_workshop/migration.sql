-- AlterTable
ALTER TABLE "workshop" ADD COLUMN     "label_from_net" DECIMAL(10,2) NOT NULL DEFAULT 50;
ALTER TABLE "workshop" ADD CONSTRAINT "workshop_label_price" CHECK ("label_from_net" >= 0);
