-- CreateTable
CREATE TABLE "photo" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "step" TEXT NOT NULL DEFAULT '',
    "reading_id" UUID,
    "words" TEXT NOT NULL DEFAULT '',
    "media_type" TEXT NOT NULL,
    "width_px" INTEGER NOT NULL,
    "height_px" INTEGER NOT NULL,
    "bytes" BYTEA NOT NULL,
    "small_bytes" BYTEA NOT NULL,
    "sent_sha256" TEXT NOT NULL,
    "taken_at" TIMESTAMPTZ(3),
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "by_id" UUID NOT NULL,
    "by_proof" TEXT NOT NULL DEFAULT 'session',
    "device_id" UUID,

    CONSTRAINT "photo_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "photo_job_id_idx" ON "photo"("job_id");

-- CreateIndex
CREATE INDEX "photo_reading_id_idx" ON "photo"("reading_id");

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_reading_id_fkey" FOREIGN KEY ("reading_id") REFERENCES "fitment_reading"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "photo" ADD CONSTRAINT "photo_is_a_picture" CHECK ("media_type" = 'image/jpeg' AND "width_px" > 0 AND "height_px" > 0
  AND octet_length("bytes") BETWEEN 1 AND 4194304 AND octet_length("small_bytes") BETWEEN 1 AND 524288);
ALTER TABLE "photo" ADD CONSTRAINT "photo_by_proof" CHECK ("by_proof" IN ('session', 'picked-offline'));
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "photo" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
