-- CreateTable
CREATE TABLE "warm_up_draft" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "source" TEXT NOT NULL,
    "file_name" TEXT NOT NULL,
    "text" BYTEA NOT NULL,
    "setting" JSONB NOT NULL,
    "uploaded_by_id" UUID NOT NULL,
    "uploaded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "warm_up_draft_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "logger_shape" (
    "shape" TEXT NOT NULL,
    "answers" JSONB NOT NULL,
    "answered_by_id" UUID NOT NULL,
    "answered_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "logger_shape_pkey" PRIMARY KEY ("shape")
);

-- CreateTable
CREATE TABLE "warm_up_log" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "file_name" TEXT NOT NULL,
    "shape" TEXT NOT NULL,
    "understood" JSONB NOT NULL,
    "answers" JSONB NOT NULL,
    "logged_on" DATE NOT NULL,
    "thermostat_kind" TEXT NOT NULL,
    "nominal_opening_c" DECIMAL(4,1),
    "heater" TEXT NOT NULL,
    "sample_count" INTEGER NOT NULL,
    "samples" BYTEA NOT NULL,
    "analysis" JSONB NOT NULL,
    "verdict" TEXT NOT NULL,
    "confidence" DECIMAL(3,2) NOT NULL,
    "kept_by_id" UUID NOT NULL,
    "kept_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "warm_up_log_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "warm_up_withdrawal" (
    "log_id" UUID NOT NULL,
    "why" TEXT NOT NULL,
    "by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "warm_up_withdrawal_pkey" PRIMARY KEY ("log_id")
);

-- CreateTable
CREATE TABLE "gauge_look" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "reading" TEXT NOT NULL,
    "minutes_driven" INTEGER NOT NULL,
    "outside_c" DECIMAL(4,1),
    "looked_on" DATE NOT NULL,
    "kept_by_id" UUID NOT NULL,
    "kept_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "gauge_look_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "proof_sheet" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "outcome" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "made_by_id" UUID NOT NULL,

    CONSTRAINT "proof_sheet_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "proof_sheet_file" (
    "sheet_id" UUID NOT NULL,
    "bytes" BYTEA NOT NULL,
    "sha256" TEXT NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "proof_sheet_file_pkey" PRIMARY KEY ("sheet_id")
);

-- CreateIndex
CREATE INDEX "warm_up_draft_job_id_idx" ON "warm_up_draft"("job_id");

-- CreateIndex
CREATE INDEX "warm_up_draft_uploaded_at_idx" ON "warm_up_draft"("uploaded_at");

-- CreateIndex
CREATE INDEX "warm_up_log_job_id_idx" ON "warm_up_log"("job_id");

-- CreateIndex
CREATE INDEX "warm_up_log_vehicle_id_kept_at_idx" ON "warm_up_log"("vehicle_id", "kept_at");

-- CreateIndex
CREATE INDEX "gauge_look_job_id_idx" ON "gauge_look"("job_id");

-- CreateIndex
CREATE UNIQUE INDEX "proof_sheet_job_id_version_key" ON "proof_sheet"("job_id", "version");

-- AddForeignKey
ALTER TABLE "warm_up_draft" ADD CONSTRAINT "warm_up_draft_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "warm_up_log" ADD CONSTRAINT "warm_up_log_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "warm_up_log" ADD CONSTRAINT "warm_up_log_vehicle_id_fkey" FOREIGN KEY ("vehicle_id") REFERENCES "vehicle"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "warm_up_withdrawal" ADD CONSTRAINT "warm_up_withdrawal_log_id_fkey" FOREIGN KEY ("log_id") REFERENCES "warm_up_log"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "gauge_look" ADD CONSTRAINT "gauge_look_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "proof_sheet" ADD CONSTRAINT "proof_sheet_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "proof_sheet_file" ADD CONSTRAINT "proof_sheet_file_sheet_id_fkey" FOREIGN KEY ("sheet_id") REFERENCES "proof_sheet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What must never be
ALTER TABLE "warm_up_draft" ADD CONSTRAINT "warm_up_draft_source" CHECK ("source" IN ('file', 'typed'));
ALTER TABLE "warm_up_log" ADD CONSTRAINT "warm_up_log_words" CHECK ("role" IN ('before', 'after') AND "source" IN ('file', 'typed')
  AND "thermostat_kind" IN ('wax', 'heated-wax', 'twin', 'motor-valve', 'hybrid', 'unknown') AND "heater" IN ('on', 'off', 'unknown')
  AND "verdict" IN ('normal', 'opens-early', 'stuck-open', 'stuck-closed', 'leaks', 'doubtful-data', 'not-enough'));
ALTER TABLE "warm_up_log" ADD CONSTRAINT "warm_up_log_figures" CHECK ("sample_count" BETWEEN 1 AND 36000
  AND "confidence" BETWEEN 0 AND 1 AND ("nominal_opening_c" IS NULL OR "nominal_opening_c" BETWEEN 50 AND 120));
ALTER TABLE "warm_up_withdrawal" ADD CONSTRAINT "warm_up_withdrawal_why" CHECK (btrim("why") <> '');
ALTER TABLE "gauge_look" ADD CONSTRAINT "gauge_look_words" CHECK ("role" IN ('before', 'after')
  AND "reading" IN ('stays-cold', 'below-middle', 'middle', 'hot') AND "minutes_driven" BETWEEN 0 AND 600);
ALTER TABLE "proof_sheet" ADD CONSTRAINT "proof_sheet_outcome" CHECK ("version" > 0
  AND "outcome" IN ('cured', 'works-now', 'looks-better', 'not-proven', 'not-cured', 'owed'));
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "warm_up_log" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "warm_up_withdrawal" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "gauge_look" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "proof_sheet" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "proof_sheet_file" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
