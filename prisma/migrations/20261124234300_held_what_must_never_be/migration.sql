-- What must never be, held by the database. SQLSTATE of our own triggers: RW001 append-only, RW002 place or stage changed
-- outside its history, RW003 an end place with money open, RW004 a gap in an invoice series, RW005 evidence missing.

CREATE EXTENSION IF NOT EXISTS btree_gist;

-- The place and its people
ALTER TABLE "workshop" ADD CONSTRAINT "workshop_only_one" CHECK ("id" = 1);
ALTER TABLE "workshop" ADD CONSTRAINT "workshop_figures" CHECK (
  "labour_rate" >= 0 AND "parts_markup_pct" >= 0 AND "waste_charge_per_l" >= 0 AND "vat_rate_pct" BETWEEN 0 AND 100
  AND "jug_ml" > 0 AND "jug_mark_ml" > 0 AND "pay_within_days" >= 0 AND "return_lead_days" >= 0);
CREATE UNIQUE INDEX "staff_name_any_case" ON "staff" (lower("name"));
ALTER TABLE "staff" ADD CONSTRAINT "staff_role" CHECK ("role" IN ('desk', 'technician', 'owner'));

-- Counter
ALTER TABLE "customer" ADD CONSTRAINT "customer_kind" CHECK ("kind" IN ('person', 'business'));
ALTER TABLE "customer" ADD CONSTRAINT "customer_named" CHECK (btrim("name") <> '');
CREATE UNIQUE INDEX "vehicle_registration" ON "vehicle" ("registration");
ALTER TABLE "vehicle" ADD CONSTRAINT "vehicle_registration_bare" CHECK ("registration" <> '' AND "registration" = upper(replace("registration", ' ', '')));
ALTER TABLE "vehicle" ADD CONSTRAINT "vehicle_thermostat_kind"
  CHECK ("thermostat_kind" IN ('wax', 'heated-wax', 'twin', 'motor-valve', 'hybrid', 'unknown'));
ALTER TABLE "vehicle" ADD CONSTRAINT "vehicle_built" CHECK (("build_month" IS NULL OR "build_month" BETWEEN 1 AND 12)
  AND ("build_year" IS NULL OR "build_year" BETWEEN 1900 AND 2200) AND ("build_month" IS NULL OR "build_year" IS NOT NULL));
ALTER TABLE "vehicle_fact" ADD CONSTRAINT "vehicle_fact_says_something" CHECK ("figure" IS NOT NULL OR "words" <> '');

-- Jobs
ALTER TABLE "job" ADD CONSTRAINT "job_comeback" CHECK (("comeback_cause" IS NULL OR "comeback_cause" IN ('part', 'work', 'other'))
  AND ("comeback_of_id" IS NULL OR "comeback_of_id" <> "id"));
ALTER TABLE "job" ADD CONSTRAINT "job_key_tag_positive" CHECK ("key_tag" > 0);
CREATE UNIQUE INDEX "job_one_car_per_key_tag" ON "job" ("key_tag")
  WHERE "key_tag" IS NOT NULL AND "stage" NOT IN ('keys-out', 'squared', 'fell-through');
ALTER TABLE "job_action" ADD CONSTRAINT "job_action_by_proof" CHECK ("by_proof" IN ('session', 'picked-offline'));
CREATE UNIQUE INDEX "job_action_device_order" ON "job_action" ("device_id", "device_seq") WHERE "device_id" IS NOT NULL;
ALTER TABLE "job_wait" ADD CONSTRAINT "job_wait_kind"
  CHECK ("kind" IN ('yes', 'part', 'cold', 'bay', 'person', 'customer', 'outside-firm'));
CREATE UNIQUE INDEX "job_wait_open_once" ON "job_wait" ("job_id", "kind") WHERE "ended_at" IS NULL;
ALTER TABLE "job_debt" ADD CONSTRAINT "job_debt_kind"
  CHECK ("kind" IN ('customer-money', 'units-and-claims', 'core-parts', 'waste', 'level-check', 'after-log', 'warranty-claim'));
ALTER TABLE "job_debt" ADD CONSTRAINT "job_debt_ending" CHECK (("ended_at" IS NULL) = ("ending" IS NULL)
  AND ("ending" IS NULL OR "ending" = 'done' OR ("ending" = 'let-go' AND btrim(coalesce("why", '')) <> '')));
CREATE UNIQUE INDEX "job_debt_open_once" ON "job_debt" ("job_id", "kind") WHERE "ended_at" IS NULL;
ALTER TABLE "work_package" ADD CONSTRAINT "work_package_range" CHECK ("gross_low" >= 0 AND "gross_high" >= "gross_low");
ALTER TABLE "authorisation" ADD CONSTRAINT "authorisation_how" CHECK ("how" IN ('in-person', 'phone', 'message', 'signature'));
ALTER TABLE "authorisation" ADD CONSTRAINT "authorisation_ceiling" CHECK ("ceiling_gross" >= 0 AND btrim("said_by") <> '');
ALTER TABLE "job_line" ADD CONSTRAINT "job_line_kind" CHECK ("kind" IN ('labour', 'part', 'coolant', 'consumable', 'waste', 'other'));
ALTER TABLE "job_line" ADD CONSTRAINT "job_line_vat" CHECK ("vat_category" IN ('S', 'Z', 'E', 'AE', 'K', 'G', 'O') AND "vat_rate_pct" BETWEEN 0 AND 100
  AND "unit_price" >= 0);

-- Bays: the plan never has two jobs in one place or one person in two, whoever asks first
ALTER TABLE "place" ADD CONSTRAINT "place_kind" CHECK ("kind" IN ('bay', 'apron'));
ALTER TABLE "booking" ADD CONSTRAINT "booking_ends_after_start" CHECK ("ends_at" > "starts_at");
ALTER TABLE "booking" ADD CONSTRAINT "booking_place_no_overlap"
  EXCLUDE USING gist ("place_id" WITH =, tstzrange("starts_at", "ends_at", '[)') WITH &&) WHERE ("called_off_at" IS NULL);
ALTER TABLE "booking" ADD CONSTRAINT "booking_hands_no_overlap"
  EXCLUDE USING gist ("staff_id" WITH =, tstzrange("starts_at", "ends_at", '[)') WITH &&) WHERE ("called_off_at" IS NULL AND "staff_id" IS NOT NULL);

-- Parts bench, suppliers, units
ALTER TABLE "instrument" ADD CONSTRAINT "instrument_u" CHECK ("expanded_u" >= 0);
ALTER TABLE "part_variant" ADD CONSTRAINT "part_variant_money" CHECK ("price_net" >= 0 AND "core_charge" >= 0);
ALTER TABLE "variant_statement" ADD CONSTRAINT "variant_statement_one_value" CHECK (("figure" IS NULL) <> ("words" IS NULL));
ALTER TABLE "variant_statement" ADD CONSTRAINT "variant_statement_provenance" CHECK ("provenance" IN ('listing', 'measured', 'photo'));
ALTER TABLE "fitment_reading" ADD CONSTRAINT "fitment_reading_one_value"
  CHECK (CASE WHEN "could_not_read" THEN "figure" IS NULL AND "words" IS NULL ELSE ("figure" IS NULL) <> ("words" IS NULL) END);
ALTER TABLE "fitment_reading" ADD CONSTRAINT "fitment_reading_place" CHECK ("place" IN ('removed-part', 'recess'));
ALTER TABLE "supplier" ADD CONSTRAINT "supplier_terms" CHECK ("return_days" >= 0 AND "restocking_pct" BETWEEN 0 AND 100
  AND "return_carriage" >= 0 AND "carriage" >= 0 AND "days_to_credit" >= 0 AND "window_start" IN ('ordered', 'arrived', 'invoiced'));
ALTER TABLE "order_line" ADD CONSTRAINT "order_line_quantity" CHECK ("quantity" > 0 AND "price_net" >= 0);
ALTER TABLE "part_unit" ADD CONSTRAINT "part_unit_arrival_reason"
  CHECK ("arrival_reason" IN ('ordered', 'surplus', 'wrong', 'damaged', 'substitute', 'replacement', 'found', 'taken-out'));
ALTER TABLE "part_unit" ADD CONSTRAINT "part_unit_ordered_has_line" CHECK ("arrival_reason" <> 'ordered' OR "order_line_id" IS NOT NULL);
ALTER TABLE "unit_money" ADD CONSTRAINT "unit_money_kind" CHECK ("kind" IN ('charged', 'credited', 'carrier-paid', 'loss-accepted'));

-- Coolant, waste, till
ALTER TABLE "coolant_product" ADD CONSTRAINT "coolant_product_facts" CHECK ("glycol" IN ('ethylene', 'propylene')
  AND "technology" IN ('inorganic', 'organic', 'hybrid', 'phosphated-organic', 'silicated-organic') AND "price_per_l" >= 0
  AND "min_product_pct" >= 0 AND "max_product_pct" <= 100 AND "min_product_pct" <= "max_product_pct"
  AND ("label_freezes_c" IS NULL) = ("label_product" IS NULL) AND ("label_product" IS NULL) = ("label_water" IS NULL));
ALTER TABLE "waste_entry" ADD CONSTRAINT "waste_entry_litres" CHECK ("volume_l" > 0 AND "direction" IN ('in', 'collected')
  AND ("direction" = 'in' OR (btrim("carrier") <> '' AND btrim("document") <> '')));
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_kind" CHECK ("kind" IN ('invoice', 'credit-note', 'deposit', 'simplified')
  AND ("kind" <> 'credit-note' OR "original_id" IS NOT NULL));
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_sum" CHECK ("tax_inclusive" = "tax_exclusive" + "vat_total");
ALTER TABLE "payment" ADD CONSTRAINT "payment_method" CHECK ("method" IN ('cash', 'card', 'transfer', 'other') AND "amount" <> 0);

-- Append-only: history is added to, never rewritten
CREATE FUNCTION "refuse_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only', TG_TABLE_NAME USING ERRCODE = 'RW001';
END
$$;
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "audit_entry" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "audit_seal" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE ON "audit_personal" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "job_template" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "job_stage_change" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "job_action" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "unit_move" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "unit_money" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "waste_entry" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "invoice" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "invoice_file" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "payment" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();

-- A stage changes by a row of its history, along a known step
INSERT INTO "stage_step" ("from", "to") VALUES
  ('spoken-of', 'expected'),
  ('expected', 'standing'),
  ('standing', 'opened'),
  ('opened', 'closed-up'),
  ('closed-up', 'filled'),
  ('filled', 'run-hot'),
  ('run-hot', 'settling'),
  ('settling', 'settled'),
  ('settled', 'keys-out'),
  ('closed-up', 'opened'),
  ('filled', 'opened'),
  ('run-hot', 'opened'),
  ('settling', 'opened'),
  ('settled', 'opened'),
  ('run-hot', 'filled'),
  ('settling', 'filled'),
  ('standing', 'keys-out'),
  ('run-hot', 'keys-out'),
  ('settling', 'keys-out'),
  ('spoken-of', 'fell-through'),
  ('expected', 'fell-through'),
  ('keys-out', 'squared'),
  ('squared', 'keys-out'),
  -- corrections: a step taken back undoes the stage it brought
  ('expected', 'spoken-of'),
  ('standing', 'expected'),
  ('opened', 'standing'),
  ('filled', 'closed-up'),
  ('settling', 'run-hot'),
  ('settled', 'settling'),
  ('keys-out', 'settled'),
  ('keys-out', 'standing'),
  ('keys-out', 'run-hot'),
  ('keys-out', 'settling');

CREATE FUNCTION "job_take_step"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "job" SET "stage" = NEW."to" WHERE "id" = NEW."job_id" AND "stage" = NEW."from";
  IF NOT FOUND THEN
    RAISE EXCEPTION 'job % is not at stage %', NEW."job_id", NEW."from" USING ERRCODE = 'RW002';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "job_takes_step" BEFORE INSERT ON "job_stage_change" FOR EACH ROW EXECUTE FUNCTION "job_take_step"();

CREATE FUNCTION "job_keep_stage"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF pg_trigger_depth() < 2 THEN
    RAISE EXCEPTION 'job %: the stage changes only by its history', OLD."id" USING ERRCODE = 'RW002';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "job_keeps_stage" BEFORE UPDATE ON "job" FOR EACH ROW WHEN (OLD."stage" IS DISTINCT FROM NEW."stage")
  EXECUTE FUNCTION "job_keep_stage"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "stage_step" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "unit_step" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE FUNCTION "job_start_at_stage"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'a job starts as spoken-of' USING ERRCODE = 'RW002';
END
$$;
CREATE TRIGGER "job_starts_spoken_of" BEFORE INSERT ON "job" FOR EACH ROW WHEN (NEW."stage" <> 'spoken-of')
  EXECUTE FUNCTION "job_start_at_stage"();

-- A unit's place: one at a time, changed only by a move
INSERT INTO "unit_step" ("from", "to") VALUES
  ('expected', 'called-off'),
  ('expected', 'never-came'),
  ('expected', 'set-aside'),
  ('set-aside', 'fitted'),
  ('set-aside', 'stocked'),
  ('set-aside', 'sold'),
  ('set-aside', 'to-return'),
  ('set-aside', 'written-off'),
  ('stocked', 'set-aside'),
  ('stocked', 'sold'),
  ('stocked', 'to-return'),
  ('stocked', 'written-off'),
  ('to-return', 'handed-over'),
  ('to-return', 'set-aside'),
  ('to-return', 'stocked'),
  ('to-return', 'written-off'),
  ('handed-over', 'gone-for-good'),
  ('handed-over', 'set-aside'),
  ('handed-over', 'written-off'),
  ('fitted', 'taken-out'),
  ('taken-out', 'to-return'),
  ('taken-out', 'written-off'),
  ('taken-out', 'set-aside'),
  ('written-off', 'set-aside');

CREATE FUNCTION "unit_take_step"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  open_amount numeric;
BEGIN
  IF NEW."to" = 'handed-over' AND btrim(NEW."evidence") = '' THEN
    RAISE EXCEPTION 'unit %: handed over needs a signature or a tracking number', NEW."unit_id" USING ERRCODE = 'RW005';
  END IF;
  UPDATE "part_unit" SET "place" = NEW."to" WHERE "id" = NEW."unit_id" AND "place" = NEW."from";
  IF NOT FOUND THEN
    RAISE EXCEPTION 'unit % is not at %', NEW."unit_id", NEW."from" USING ERRCODE = 'RW002';
  END IF;
  IF NEW."to" IN ('called-off', 'never-came', 'gone-for-good', 'written-off') THEN
    SELECT coalesce(sum(CASE WHEN "kind" = 'charged' THEN "amount_net" ELSE -"amount_net" END), 0) INTO open_amount
      FROM "unit_money" WHERE "unit_id" = NEW."unit_id";
    IF open_amount <> 0 THEN
      RAISE EXCEPTION 'unit %: % is still open', NEW."unit_id", open_amount USING ERRCODE = 'RW003';
    END IF;
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "unit_takes_step" BEFORE INSERT ON "unit_move" FOR EACH ROW EXECUTE FUNCTION "unit_take_step"();

CREATE FUNCTION "unit_keep_place"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF pg_trigger_depth() < 2 THEN
    RAISE EXCEPTION 'unit %: the place changes only by a move', OLD."id" USING ERRCODE = 'RW002';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "unit_keeps_place" BEFORE UPDATE ON "part_unit" FOR EACH ROW WHEN (OLD."place" IS DISTINCT FROM NEW."place")
  EXECUTE FUNCTION "unit_keep_place"();
ALTER TABLE "part_unit" ADD CONSTRAINT "part_unit_place" CHECK ("place" IN ('expected', 'called-off', 'never-came', 'set-aside', 'fitted',
  'stocked', 'sold', 'to-return', 'handed-over', 'gone-for-good', 'taken-out', 'written-off'));
CREATE UNIQUE INDEX "unit_money_one_charge" ON "unit_money" ("unit_id", "reference") WHERE "kind" = 'charged' AND "amount_net" > 0;

-- Invoice numbers without gaps: each is the next one of its series
CREATE FUNCTION "invoice_follow_on"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW."serial" <> coalesce((SELECT max("serial") FROM "invoice" WHERE "series_key" = NEW."series_key"), 0) + 1 THEN
    RAISE EXCEPTION 'invoice series %: % does not follow on', NEW."series_key", NEW."serial" USING ERRCODE = 'RW004';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "invoice_follows_on" BEFORE INSERT ON "invoice" FOR EACH ROW EXECUTE FUNCTION "invoice_follow_on"();
