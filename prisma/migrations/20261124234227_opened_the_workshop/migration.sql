-- CreateTable
CREATE TABLE "workshop" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "address_lines" TEXT[],
    "postcode" TEXT NOT NULL DEFAULT '',
    "city" TEXT NOT NULL DEFAULT '',
    "country" TEXT NOT NULL DEFAULT 'GB',
    "phone" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "vat_id" TEXT NOT NULL DEFAULT '',
    "pay_to" TEXT NOT NULL DEFAULT '',
    "time_zone" TEXT NOT NULL DEFAULT 'Europe/London',
    "currency" TEXT NOT NULL DEFAULT 'EUR',
    "is_demo" BOOLEAN NOT NULL DEFAULT false,
    "is_one_person" BOOLEAN NOT NULL DEFAULT false,
    "altitude_m" INTEGER NOT NULL DEFAULT 0,
    "coldest_air_c" DECIMAL(4,1) NOT NULL DEFAULT -15,
    "hottest_air_c" DECIMAL(4,1) NOT NULL DEFAULT 35,
    "freeze_margin_k" DECIMAL(3,1) NOT NULL DEFAULT 5,
    "jug_ml" INTEGER NOT NULL DEFAULT 2000,
    "jug_mark_ml" INTEGER NOT NULL DEFAULT 50,
    "labour_rate" DECIMAL(10,2) NOT NULL DEFAULT 0,
    "parts_markup_pct" DECIMAL(5,2) NOT NULL DEFAULT 0,
    "waste_charge_per_l" DECIMAL(8,2) NOT NULL DEFAULT 0,
    "vat_rate_pct" DECIMAL(5,2) NOT NULL DEFAULT 0,
    "pay_within_days" INTEGER NOT NULL DEFAULT 14,
    "guarantee_words" TEXT NOT NULL DEFAULT '',
    "return_lead_days" INTEGER NOT NULL DEFAULT 5,
    "fill_tolerance_ml" INTEGER NOT NULL DEFAULT 300,
    "top_up_tolerance_ml" INTEGER NOT NULL DEFAULT 150,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "workshop_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "staff" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "display_name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "secret_hash" TEXT NOT NULL,
    "units" JSONB NOT NULL DEFAULT '{}',
    "is_active" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "staff_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "token_hash" TEXT NOT NULL,
    "staff_id" UUID NOT NULL,
    "csrf_secret" TEXT NOT NULL,
    "flash" JSONB,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "session_pkey" PRIMARY KEY ("token_hash")
);

-- CreateTable
CREATE TABLE "sign_in_failure" (
    "id" BIGSERIAL NOT NULL,
    "name" TEXT NOT NULL,
    "from" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sign_in_failure_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "kept_form" (
    "token_hash" TEXT NOT NULL,
    "path" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    "kept_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "kept_form_pkey" PRIMARY KEY ("token_hash")
);

-- CreateTable
CREATE TABLE "idempotency_key" (
    "scope" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "route" TEXT NOT NULL,
    "body_hash" TEXT NOT NULL,
    "result" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "idempotency_key_pkey" PRIMARY KEY ("scope","key")
);

-- CreateTable
CREATE TABLE "audit_entry" (
    "id" BIGSERIAL NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "staff_id" UUID,
    "action" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subject_id" TEXT NOT NULL,
    "before" JSONB,
    "after" JSONB,
    "personal_hash" TEXT,

    CONSTRAINT "audit_entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "audit_personal" (
    "entry_id" BIGINT NOT NULL,
    "salt" TEXT NOT NULL,
    "values" JSONB NOT NULL,

    CONSTRAINT "audit_personal_pkey" PRIMARY KEY ("entry_id")
);

-- CreateTable
CREATE TABLE "audit_seal" (
    "seq" BIGINT NOT NULL,
    "entry_id" BIGINT NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "audit_seal_pkey" PRIMARY KEY ("seq")
);

-- CreateTable
CREATE TABLE "customer" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL DEFAULT 'person',
    "phone" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "address_lines" TEXT[],
    "postcode" TEXT NOT NULL DEFAULT '',
    "city" TEXT NOT NULL DEFAULT '',
    "country" TEXT NOT NULL DEFAULT '',
    "vat_id" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "customer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "vehicle" (
    "id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "registration" TEXT NOT NULL,
    "vin" TEXT,
    "make" TEXT NOT NULL,
    "model" TEXT NOT NULL,
    "engine_code" TEXT NOT NULL DEFAULT '',
    "build_year" INTEGER,
    "build_month" INTEGER,
    "thermostat_kind" TEXT NOT NULL DEFAULT 'unknown',
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "vehicle_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "vehicle_fact" (
    "id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "figure" DECIMAL(12,4),
    "unit" TEXT NOT NULL DEFAULT '',
    "words" TEXT NOT NULL DEFAULT '',
    "source" TEXT NOT NULL,
    "job_id" UUID,
    "entered_by_id" UUID NOT NULL,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),
    "withdrawn_why" TEXT,

    CONSTRAINT "vehicle_fact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job_template" (
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "definition" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "job_template_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "customer_id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "template_id" UUID NOT NULL,
    "key_tag" INTEGER,
    "complaint" TEXT NOT NULL,
    "complaint_when" TEXT NOT NULL DEFAULT '',
    "odometer_km" INTEGER,
    "left_in_car" TEXT NOT NULL DEFAULT '',
    "stage" TEXT NOT NULL DEFAULT 'spoken-of',
    "promised_at" TIMESTAMPTZ(3),
    "arrived_at" TIMESTAMPTZ(3),
    "keys_out_at" TIMESTAMPTZ(3),
    "squared_at" TIMESTAMPTZ(3),
    "comeback_of_id" UUID,
    "comeback_cause" TEXT,
    "no_charge_why" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "created_by_id" UUID NOT NULL,

    CONSTRAINT "job_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "stage_step" (
    "from" TEXT NOT NULL,
    "to" TEXT NOT NULL,

    CONSTRAINT "stage_step_pkey" PRIMARY KEY ("from","to")
);

-- CreateTable
CREATE TABLE "job_stage_change" (
    "id" BIGSERIAL NOT NULL,
    "job_id" UUID NOT NULL,
    "from" TEXT NOT NULL,
    "to" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by_id" UUID,
    "why" TEXT NOT NULL DEFAULT '',
    "action_id" UUID,

    CONSTRAINT "job_stage_change_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job_action" (
    "id" UUID NOT NULL,
    "seq" BIGSERIAL NOT NULL,
    "job_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "step" TEXT,
    "value" JSONB NOT NULL,
    "read_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "by_id" UUID NOT NULL,
    "by_proof" TEXT NOT NULL,
    "device_id" UUID,
    "device_seq" INTEGER,
    "difference" TEXT,

    CONSTRAINT "job_action_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job_wait" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "words" TEXT NOT NULL DEFAULT '',
    "who_acts" TEXT NOT NULL DEFAULT '',
    "since" TIMESTAMPTZ(3) NOT NULL,
    "until" TIMESTAMPTZ(3),
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "job_wait_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job_debt" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "words" TEXT NOT NULL DEFAULT '',
    "due_on" DATE,
    "opened_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "ending" TEXT,
    "why" TEXT,
    "ended_by_id" UUID,

    CONSTRAINT "job_debt_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "work_package" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "gross_low" DECIMAL(12,2) NOT NULL,
    "gross_high" DECIMAL(12,2) NOT NULL,

    CONSTRAINT "work_package_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "authorisation" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "said_by" TEXT NOT NULL,
    "said_at" TIMESTAMPTZ(3) NOT NULL,
    "how" TEXT NOT NULL,
    "ceiling_gross" DECIMAL(12,2) NOT NULL,
    "old_part_back" BOOLEAN NOT NULL DEFAULT false,
    "words" TEXT NOT NULL DEFAULT '',
    "recorded_by_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),

    CONSTRAINT "authorisation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "authorised_package" (
    "authorisation_id" UUID NOT NULL,
    "package_id" UUID NOT NULL,

    CONSTRAINT "authorised_package_pkey" PRIMARY KEY ("authorisation_id","package_id")
);

-- CreateTable
CREATE TABLE "job_line" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "package_id" UUID,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "origin" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "quantity" DECIMAL(12,3) NOT NULL,
    "unit" TEXT NOT NULL,
    "unit_price" DECIMAL(14,4) NOT NULL,
    "vat_category" TEXT NOT NULL,
    "vat_rate_pct" DECIMAL(5,2) NOT NULL,
    "changed_why" TEXT,
    "removed_at" TIMESTAMPTZ(3),

    CONSTRAINT "job_line_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "place" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "words" TEXT NOT NULL DEFAULT '',
    "position" INTEGER NOT NULL,
    "is_active" BOOLEAN NOT NULL DEFAULT true,

    CONSTRAINT "place_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "booking" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "place_id" UUID NOT NULL,
    "staff_id" UUID,
    "phase" TEXT NOT NULL,
    "starts_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "called_off_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "booking_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "instrument" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "measures" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "expanded_u" DECIMAL(10,4) NOT NULL,
    "u_source" TEXT NOT NULL DEFAULT '',
    "calibration_due" DATE,
    "is_active" BOOLEAN NOT NULL DEFAULT true,

    CONSTRAINT "instrument_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "part_family" (
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "features" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "part_family_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "part_variant" (
    "id" UUID NOT NULL,
    "family_id" UUID NOT NULL,
    "supplier_id" UUID NOT NULL,
    "part_number" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "price_net" DECIMAL(12,2) NOT NULL,
    "core_charge" DECIMAL(12,2) NOT NULL DEFAULT 0,

    CONSTRAINT "part_variant_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "variant_statement" (
    "id" UUID NOT NULL,
    "variant_id" UUID NOT NULL,
    "feature" TEXT NOT NULL,
    "figure" DECIMAL(10,3),
    "words" TEXT,
    "tolerance" DECIMAL(10,3),
    "provenance" TEXT NOT NULL,
    "said_by_id" UUID,
    "said_at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),

    CONSTRAINT "variant_statement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "catalogue_listing" (
    "id" UUID NOT NULL,
    "variant_id" UUID NOT NULL,
    "engine_code" TEXT NOT NULL,
    "built_from" DATE,
    "built_to" DATE,
    "catalogue" TEXT NOT NULL,

    CONSTRAINT "catalogue_listing_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "fitment_reading" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "feature" TEXT NOT NULL,
    "place" TEXT NOT NULL DEFAULT 'removed-part',
    "figure" DECIMAL(10,3),
    "words" TEXT,
    "could_not_read" BOOLEAN NOT NULL DEFAULT false,
    "why" TEXT NOT NULL DEFAULT '',
    "instrument" TEXT NOT NULL DEFAULT '',
    "expanded_u" DECIMAL(10,4),
    "read_by_id" UUID NOT NULL,
    "read_at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),

    CONSTRAINT "fitment_reading_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "fitment_choice" (
    "job_id" UUID NOT NULL,
    "variant_id" UUID NOT NULL,
    "engine_code" TEXT NOT NULL,
    "probability" DECIMAL(6,5) NOT NULL,
    "evidence" JSONB NOT NULL,
    "chosen_by_id" UUID NOT NULL,
    "chosen_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "fitment_choice_pkey" PRIMARY KEY ("job_id")
);

-- CreateTable
CREATE TABLE "supplier" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "phone" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "account_number" TEXT NOT NULL DEFAULT '',
    "return_days" INTEGER NOT NULL,
    "window_start" TEXT NOT NULL DEFAULT 'arrived',
    "restocking_pct" DECIMAL(5,2) NOT NULL DEFAULT 0,
    "return_carriage" DECIMAL(10,2) NOT NULL DEFAULT 0,
    "carriage" DECIMAL(10,2) NOT NULL DEFAULT 0,
    "unopened_only" BOOLEAN NOT NULL DEFAULT false,
    "days_to_credit" INTEGER NOT NULL DEFAULT 30,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "supplier_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "purchase_order" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "supplier_id" UUID NOT NULL,
    "ordered_at" TIMESTAMPTZ(3) NOT NULL,
    "ordered_by_id" UUID NOT NULL,
    "expected_on" DATE,

    CONSTRAINT "purchase_order_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_line" (
    "id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "variant_id" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "price_net" DECIMAL(12,2) NOT NULL,

    CONSTRAINT "order_line_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "part_unit" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "variant_id" UUID NOT NULL,
    "order_line_id" UUID,
    "arrival_reason" TEXT NOT NULL DEFAULT 'ordered',
    "place" TEXT NOT NULL DEFAULT 'expected',
    "job_id" UUID,
    "is_opened" BOOLEAN NOT NULL DEFAULT false,
    "arrived_at" TIMESTAMPTZ(3),
    "return_by" DATE,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "part_unit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "unit_step" (
    "from" TEXT NOT NULL,
    "to" TEXT NOT NULL,

    CONSTRAINT "unit_step_pkey" PRIMARY KEY ("from","to")
);

-- CreateTable
CREATE TABLE "unit_move" (
    "id" BIGSERIAL NOT NULL,
    "unit_id" UUID NOT NULL,
    "from" TEXT NOT NULL,
    "to" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by_id" UUID,
    "why" TEXT NOT NULL DEFAULT '',
    "evidence" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "unit_move_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "unit_money" (
    "id" BIGSERIAL NOT NULL,
    "unit_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "amount_net" DECIMAL(12,2) NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by_id" UUID,
    "reference" TEXT NOT NULL DEFAULT '',
    "why" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "unit_money_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "coolant_product" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "glycol" TEXT NOT NULL,
    "technology" TEXT NOT NULL,
    "approval" TEXT NOT NULL DEFAULT '',
    "is_ready_mixed" BOOLEAN NOT NULL DEFAULT false,
    "label_product" DECIMAL(5,2),
    "label_water" DECIMAL(5,2),
    "label_freezes_c" DECIMAL(4,1),
    "min_product_pct" DECIMAL(4,1) NOT NULL DEFAULT 33,
    "max_product_pct" DECIMAL(4,1) NOT NULL DEFAULT 60,
    "price_per_l" DECIMAL(8,2) NOT NULL,
    "service_years" INTEGER,
    "service_km" INTEGER,
    "is_active" BOOLEAN NOT NULL DEFAULT true,

    CONSTRAINT "coolant_product_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "waste_entry" (
    "id" UUID NOT NULL,
    "job_id" UUID,
    "direction" TEXT NOT NULL,
    "volume_l" DECIMAL(8,3) NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by_id" UUID NOT NULL,
    "carrier" TEXT NOT NULL DEFAULT '',
    "document" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "action_id" UUID,

    CONSTRAINT "waste_entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "invoice_series" (
    "key" TEXT NOT NULL,
    "prefix" TEXT NOT NULL,
    "next_number" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "invoice_series_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "invoice" (
    "id" UUID NOT NULL,
    "series_key" TEXT NOT NULL,
    "serial" INTEGER NOT NULL,
    "number" TEXT NOT NULL,
    "kind" TEXT NOT NULL DEFAULT 'invoice',
    "job_id" UUID,
    "customer_id" UUID NOT NULL,
    "original_id" UUID,
    "issued_on" DATE NOT NULL,
    "due_on" DATE NOT NULL,
    "currency" TEXT NOT NULL,
    "tax_exclusive" DECIMAL(14,2) NOT NULL,
    "vat_total" DECIMAL(14,2) NOT NULL,
    "tax_inclusive" DECIMAL(14,2) NOT NULL,
    "payable" DECIMAL(14,2) NOT NULL,
    "document" JSONB NOT NULL,
    "issued_at" TIMESTAMPTZ(3) NOT NULL,
    "issued_by_id" UUID NOT NULL,

    CONSTRAINT "invoice_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "invoice_file" (
    "id" UUID NOT NULL,
    "invoice_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "sha256" TEXT NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "invoice_file_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "payment" (
    "id" UUID NOT NULL,
    "invoice_id" UUID NOT NULL,
    "amount" DECIMAL(14,2) NOT NULL,
    "method" TEXT NOT NULL,
    "reference" TEXT NOT NULL DEFAULT '',
    "paid_on" DATE NOT NULL,
    "taken_by_id" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "payment_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "session_expires_at_idx" ON "session"("expires_at");

-- CreateIndex
CREATE INDEX "sign_in_failure_name_at_idx" ON "sign_in_failure"("name", "at");

-- CreateIndex
CREATE INDEX "sign_in_failure_from_at_idx" ON "sign_in_failure"("from", "at");

-- CreateIndex
CREATE INDEX "idempotency_key_at_idx" ON "idempotency_key"("at");

-- CreateIndex
CREATE INDEX "audit_entry_subject_subject_id_idx" ON "audit_entry"("subject", "subject_id");

-- CreateIndex
CREATE UNIQUE INDEX "audit_seal_entry_id_key" ON "audit_seal"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "customer_number_key" ON "customer"("number");

-- CreateIndex
CREATE INDEX "customer_name_idx" ON "customer"("name");

-- CreateIndex
CREATE INDEX "vehicle_customer_id_idx" ON "vehicle"("customer_id");

-- CreateIndex
CREATE INDEX "vehicle_engine_code_idx" ON "vehicle"("engine_code");

-- CreateIndex
CREATE INDEX "vehicle_fact_vehicle_id_key_idx" ON "vehicle_fact"("vehicle_id", "key");

-- CreateIndex
CREATE UNIQUE INDEX "job_template_key_version_key" ON "job_template"("key", "version");

-- CreateIndex
CREATE UNIQUE INDEX "job_number_key" ON "job"("number");

-- CreateIndex
CREATE INDEX "job_stage_idx" ON "job"("stage");

-- CreateIndex
CREATE INDEX "job_vehicle_id_idx" ON "job"("vehicle_id");

-- CreateIndex
CREATE INDEX "job_customer_id_idx" ON "job"("customer_id");

-- CreateIndex
CREATE INDEX "job_stage_change_job_id_idx" ON "job_stage_change"("job_id");

-- CreateIndex
CREATE UNIQUE INDEX "job_action_seq_key" ON "job_action"("seq");

-- CreateIndex
CREATE INDEX "job_action_job_id_seq_idx" ON "job_action"("job_id", "seq");

-- CreateIndex
CREATE INDEX "job_wait_job_id_idx" ON "job_wait"("job_id");

-- CreateIndex
CREATE INDEX "job_debt_job_id_idx" ON "job_debt"("job_id");

-- CreateIndex
CREATE UNIQUE INDEX "work_package_job_id_position_key" ON "work_package"("job_id", "position");

-- CreateIndex
CREATE INDEX "authorisation_job_id_idx" ON "authorisation"("job_id");

-- CreateIndex
CREATE UNIQUE INDEX "job_line_job_id_origin_key" ON "job_line"("job_id", "origin");

-- CreateIndex
CREATE UNIQUE INDEX "place_name_key" ON "place"("name");

-- CreateIndex
CREATE INDEX "booking_starts_at_idx" ON "booking"("starts_at");

-- CreateIndex
CREATE UNIQUE INDEX "instrument_name_key" ON "instrument"("name");

-- CreateIndex
CREATE UNIQUE INDEX "part_family_key_version_key" ON "part_family"("key", "version");

-- CreateIndex
CREATE UNIQUE INDEX "part_variant_supplier_id_part_number_key" ON "part_variant"("supplier_id", "part_number");

-- CreateIndex
CREATE INDEX "variant_statement_variant_id_feature_idx" ON "variant_statement"("variant_id", "feature");

-- CreateIndex
CREATE INDEX "catalogue_listing_engine_code_idx" ON "catalogue_listing"("engine_code");

-- CreateIndex
CREATE INDEX "fitment_reading_job_id_idx" ON "fitment_reading"("job_id");

-- CreateIndex
CREATE INDEX "fitment_choice_engine_code_idx" ON "fitment_choice"("engine_code");

-- CreateIndex
CREATE UNIQUE INDEX "supplier_name_key" ON "supplier"("name");

-- CreateIndex
CREATE UNIQUE INDEX "purchase_order_number_key" ON "purchase_order"("number");

-- CreateIndex
CREATE UNIQUE INDEX "part_unit_code_key" ON "part_unit"("code");

-- CreateIndex
CREATE INDEX "part_unit_place_idx" ON "part_unit"("place");

-- CreateIndex
CREATE INDEX "part_unit_job_id_idx" ON "part_unit"("job_id");

-- CreateIndex
CREATE INDEX "unit_move_unit_id_idx" ON "unit_move"("unit_id");

-- CreateIndex
CREATE INDEX "unit_money_unit_id_idx" ON "unit_money"("unit_id");

-- CreateIndex
CREATE UNIQUE INDEX "coolant_product_name_key" ON "coolant_product"("name");

-- CreateIndex
CREATE UNIQUE INDEX "waste_entry_action_id_key" ON "waste_entry"("action_id");

-- CreateIndex
CREATE INDEX "waste_entry_at_idx" ON "waste_entry"("at");

-- CreateIndex
CREATE UNIQUE INDEX "invoice_number_key" ON "invoice"("number");

-- CreateIndex
CREATE INDEX "invoice_job_id_idx" ON "invoice"("job_id");

-- CreateIndex
CREATE UNIQUE INDEX "invoice_series_key_serial_key" ON "invoice"("series_key", "serial");

-- CreateIndex
CREATE UNIQUE INDEX "invoice_file_invoice_id_kind_key" ON "invoice_file"("invoice_id", "kind");

-- CreateIndex
CREATE INDEX "payment_invoice_id_idx" ON "payment"("invoice_id");

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_staff_id_fkey" FOREIGN KEY ("staff_id") REFERENCES "staff"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "audit_personal" ADD CONSTRAINT "audit_personal_entry_id_fkey" FOREIGN KEY ("entry_id") REFERENCES "audit_entry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "audit_seal" ADD CONSTRAINT "audit_seal_entry_id_fkey" FOREIGN KEY ("entry_id") REFERENCES "audit_entry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vehicle" ADD CONSTRAINT "vehicle_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vehicle_fact" ADD CONSTRAINT "vehicle_fact_vehicle_id_fkey" FOREIGN KEY ("vehicle_id") REFERENCES "vehicle"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_vehicle_id_fkey" FOREIGN KEY ("vehicle_id") REFERENCES "vehicle"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_template_id_fkey" FOREIGN KEY ("template_id") REFERENCES "job_template"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_comeback_of_id_fkey" FOREIGN KEY ("comeback_of_id") REFERENCES "job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_stage_change" ADD CONSTRAINT "job_stage_change_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_stage_change" ADD CONSTRAINT "job_stage_change_from_to_fkey" FOREIGN KEY ("from", "to") REFERENCES "stage_step"("from", "to") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_action" ADD CONSTRAINT "job_action_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_wait" ADD CONSTRAINT "job_wait_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_debt" ADD CONSTRAINT "job_debt_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_package" ADD CONSTRAINT "work_package_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "authorisation" ADD CONSTRAINT "authorisation_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "authorised_package" ADD CONSTRAINT "authorised_package_authorisation_id_fkey" FOREIGN KEY ("authorisation_id") REFERENCES "authorisation"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "authorised_package" ADD CONSTRAINT "authorised_package_package_id_fkey" FOREIGN KEY ("package_id") REFERENCES "work_package"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_line" ADD CONSTRAINT "job_line_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_line" ADD CONSTRAINT "job_line_package_id_fkey" FOREIGN KEY ("package_id") REFERENCES "work_package"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "booking" ADD CONSTRAINT "booking_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "booking" ADD CONSTRAINT "booking_place_id_fkey" FOREIGN KEY ("place_id") REFERENCES "place"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_variant" ADD CONSTRAINT "part_variant_family_id_fkey" FOREIGN KEY ("family_id") REFERENCES "part_family"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_variant" ADD CONSTRAINT "part_variant_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "supplier"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "variant_statement" ADD CONSTRAINT "variant_statement_variant_id_fkey" FOREIGN KEY ("variant_id") REFERENCES "part_variant"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "catalogue_listing" ADD CONSTRAINT "catalogue_listing_variant_id_fkey" FOREIGN KEY ("variant_id") REFERENCES "part_variant"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "fitment_reading" ADD CONSTRAINT "fitment_reading_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "fitment_choice" ADD CONSTRAINT "fitment_choice_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "fitment_choice" ADD CONSTRAINT "fitment_choice_variant_id_fkey" FOREIGN KEY ("variant_id") REFERENCES "part_variant"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "purchase_order" ADD CONSTRAINT "purchase_order_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "supplier"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "order_line" ADD CONSTRAINT "order_line_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "purchase_order"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "order_line" ADD CONSTRAINT "order_line_variant_id_fkey" FOREIGN KEY ("variant_id") REFERENCES "part_variant"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_unit" ADD CONSTRAINT "part_unit_variant_id_fkey" FOREIGN KEY ("variant_id") REFERENCES "part_variant"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_unit" ADD CONSTRAINT "part_unit_order_line_id_fkey" FOREIGN KEY ("order_line_id") REFERENCES "order_line"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_unit" ADD CONSTRAINT "part_unit_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "unit_move" ADD CONSTRAINT "unit_move_unit_id_fkey" FOREIGN KEY ("unit_id") REFERENCES "part_unit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "unit_move" ADD CONSTRAINT "unit_move_from_to_fkey" FOREIGN KEY ("from", "to") REFERENCES "unit_step"("from", "to") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "unit_money" ADD CONSTRAINT "unit_money_unit_id_fkey" FOREIGN KEY ("unit_id") REFERENCES "part_unit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "waste_entry" ADD CONSTRAINT "waste_entry_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_series_key_fkey" FOREIGN KEY ("series_key") REFERENCES "invoice_series"("key") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_original_id_fkey" FOREIGN KEY ("original_id") REFERENCES "invoice"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice_file" ADD CONSTRAINT "invoice_file_invoice_id_fkey" FOREIGN KEY ("invoice_id") REFERENCES "invoice"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "payment" ADD CONSTRAINT "payment_invoice_id_fkey" FOREIGN KEY ("invoice_id") REFERENCES "invoice"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
