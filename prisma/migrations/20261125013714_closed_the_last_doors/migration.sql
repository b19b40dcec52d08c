-- What must never be, continued. SQLSTATE of our own triggers, all of them:
--   RW001 append-only: what was said, read, done or issued is neither rewritten nor deleted
--   RW002 place or stage changed outside its history, or begun elsewhere than at its beginning
--   RW003 an end place with money open
--   RW004 a gap in an invoice series
--   RW005 evidence missing
--   RW006 a job squared while something is owed
--   RW007 a second invoice for a job whose first one stands
--   RW008 a credit note on something that is no invoice of its job, or for more than was invoiced
--   RW009 a payment on a credit note, of more than is due, or paying back more than was paid
-- Whoever breaks a rule at the same moment as somebody else waits for the row that both need, and is then judged by what the
-- first one did. That holds at READ COMMITTED (each statement sees what was committed before it) and at SERIALIZABLE.
-- TRUNCATE fires no row trigger, so the owner of the tables can empty them: a trigger against it would hold nobody back, for
-- whoever may truncate a table may drop its triggers too. The chain of the audit log shows what is missing.

-- Till: no figure of a document is below zero; a credit note has the signs of its invoice
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_not_below_zero"
  CHECK ("tax_exclusive" >= 0 AND "vat_total" >= 0 AND "tax_inclusive" >= 0 AND "payable" >= 0);

-- A job has one invoice that stands. Once it is credited in full, the job may be invoiced anew.
CREATE FUNCTION "invoice_stand_alone"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  standing text;
BEGIN
  PERFORM 1 FROM "job" WHERE "id" = NEW."job_id" FOR UPDATE;
  SELECT i."number" INTO standing
    FROM "invoice" i
    CROSS JOIN LATERAL (SELECT coalesce(sum("tax_exclusive"), 0) AS "net", coalesce(sum("tax_inclusive"), 0) AS "gross"
      FROM "invoice" WHERE "original_id" = i."id" AND "kind" = 'credit-note') AS credited
    WHERE i."job_id" = NEW."job_id" AND i."kind" IN ('invoice', 'simplified')
      AND (i."tax_exclusive" <> credited."net" OR i."tax_inclusive" <> credited."gross")
    LIMIT 1;
  IF FOUND THEN
    RAISE EXCEPTION 'job %: invoice % stands; credit it in full first', NEW."job_id", standing USING ERRCODE = 'RW007';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "invoice_stands_alone" BEFORE INSERT ON "invoice" FOR EACH ROW
  WHEN (NEW."kind" IN ('invoice', 'simplified') AND NEW."job_id" IS NOT NULL) EXECUTE FUNCTION "invoice_stand_alone"();

-- A credit note takes back an invoice of its own job, at most all of it. The row of the original's series puts the credit notes
-- and the payments of one invoice in an order: an issued invoice is itself never updated.
CREATE FUNCTION "credit_note_stay_within"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  original record;
  credited record;
BEGIN
  SELECT i."number", i."kind", i."job_id", i."currency", i."tax_exclusive", i."tax_inclusive" INTO original
    FROM "invoice" i JOIN "invoice_series" s ON s."key" = i."series_key" WHERE i."id" = NEW."original_id" FOR UPDATE OF s;
  IF NOT FOUND THEN
    RETURN NEW; -- the check of its kind or the foreign key refuses it
  END IF;
  IF original."kind" = 'credit-note' THEN
    RAISE EXCEPTION '%: % is a credit note itself', NEW."number", original."number" USING ERRCODE = 'RW008';
  END IF;
  IF original."job_id" IS DISTINCT FROM NEW."job_id" OR original."currency" <> NEW."currency" THEN
    RAISE EXCEPTION '%: % is of another job or in another currency', NEW."number", original."number" USING ERRCODE = 'RW008';
  END IF;
  SELECT coalesce(sum("tax_exclusive"), 0) AS "net", coalesce(sum("tax_inclusive"), 0) AS "gross" INTO credited
    FROM "invoice" WHERE "original_id" = NEW."original_id" AND "kind" = 'credit-note';
  IF credited."net" + NEW."tax_exclusive" > original."tax_exclusive" OR credited."gross" + NEW."tax_inclusive" > original."tax_inclusive" THEN
    RAISE EXCEPTION '%: only % (% with tax) of % is left to credit', NEW."number", original."tax_exclusive" - credited."net",
      original."tax_inclusive" - credited."gross", original."number" USING ERRCODE = 'RW008';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "credit_note_stays_within" BEFORE INSERT ON "invoice" FOR EACH ROW WHEN (NEW."kind" = 'credit-note')
  EXECUTE FUNCTION "credit_note_stay_within"();

-- Paid is at most what is due: payable less the credit notes' payable. Money goes back (a negative entry) at most as far as it
-- came, or as far as credit notes say that we owe, where part of the invoice was prepaid without a document. All money of an
-- invoice is entered on it, also what is paid back after a credit note, so that it has one account: none on the credit note.
CREATE FUNCTION "payment_stay_within"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  bill record;
  due numeric;
  paid numeric;
BEGIN
  SELECT i."number", i."kind", i."payable" INTO bill
    FROM "invoice" i JOIN "invoice_series" s ON s."key" = i."series_key" WHERE i."id" = NEW."invoice_id" FOR UPDATE OF s;
  IF NOT FOUND THEN
    RETURN NEW; -- the foreign key refuses it
  END IF;
  IF bill."kind" = 'credit-note' THEN
    RAISE EXCEPTION '% is a credit note: enter what is paid back on its invoice', bill."number" USING ERRCODE = 'RW009';
  END IF;
  SELECT bill."payable" - coalesce(sum("payable"), 0) INTO due
    FROM "invoice" WHERE "original_id" = NEW."invoice_id" AND "kind" = 'credit-note';
  SELECT coalesce(sum("amount"), 0) INTO paid FROM "payment" WHERE "invoice_id" = NEW."invoice_id";
  IF NEW."amount" > 0 AND paid + NEW."amount" > due THEN
    RAISE EXCEPTION '%: % is more than the % still open', bill."number", NEW."amount", greatest(due - paid, 0) USING ERRCODE = 'RW009';
  END IF;
  IF NEW."amount" < 0 AND paid + NEW."amount" < least(due, 0) THEN
    RAISE EXCEPTION '%: % is more than the % that can go back', bill."number", -NEW."amount", paid - least(due, 0) USING ERRCODE = 'RW009';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "payment_stays_within" BEFORE INSERT ON "payment" FOR EACH ROW EXECUTE FUNCTION "payment_stay_within"();

-- A unit's money and its end wait for each other at the unit's row (a move updates it, see unit_take_step), so that no entry
-- slips in between the sum of an account and the end that this sum allows.
-- At an end, whatever others do is still taken in: a credit, the carrier's money, and a charge as well (a supplier who invoices a
-- piece that never came), and so is every counter-entry, for undoing is never a deletion. If money is then open, that is a claim
-- to chase; refused, nobody would know of it. Accepting a loss is our own word and closes a claim: at an end it leaves nothing
-- open, for there is no later move that would ask again.
CREATE FUNCTION "unit_money_leave_end_closed"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  place_now text;
  open_amount numeric;
BEGIN
  SELECT "place" INTO place_now FROM "part_unit" WHERE "id" = NEW."unit_id" FOR UPDATE;
  IF NEW."kind" = 'loss-accepted' AND NEW."amount_net" > 0 AND place_now IN ('called-off', 'never-came', 'gone-for-good', 'written-off') THEN
    SELECT coalesce(sum(CASE WHEN "kind" = 'charged' THEN "amount_net" ELSE -"amount_net" END), 0) INTO open_amount
      FROM "unit_money" WHERE "unit_id" = NEW."unit_id";
    IF open_amount <> NEW."amount_net" THEN
      RAISE EXCEPTION 'unit %: at its end (%) the loss to accept is what is open, %', NEW."unit_id", place_now, open_amount
        USING ERRCODE = 'RW003';
    END IF;
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "unit_money_leaves_end_closed" BEFORE INSERT ON "unit_money" FOR EACH ROW EXECUTE FUNCTION "unit_money_leave_end_closed"();

CREATE FUNCTION "unit_start_expected"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'a unit starts as expected' USING ERRCODE = 'RW002';
END
$$;
CREATE TRIGGER "unit_starts_expected" BEFORE INSERT ON "part_unit" FOR EACH ROW WHEN (NEW."place" <> 'expected')
  EXECUTE FUNCTION "unit_start_expected"();

-- A yes, its packages, and what was stated or read: withdrawn at most, once, and otherwise as they were said
CREATE FUNCTION "statement_keep"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  withdrawal CONSTANT text[] := ARRAY['withdrawn_at', 'withdrawn_why'];
BEGIN
  IF TG_OP = 'UPDATE' AND OLD."withdrawn_at" IS NULL AND NEW."withdrawn_at" IS NOT NULL
    AND to_jsonb(NEW) - withdrawal = to_jsonb(OLD) - withdrawal THEN
    RETURN NEW;
  END IF;
  RAISE EXCEPTION '% can be withdrawn once, and not changed or deleted', TG_TABLE_NAME USING ERRCODE = 'RW001';
END
$$;
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "authorisation" FOR EACH ROW EXECUTE FUNCTION "statement_keep"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "vehicle_fact" FOR EACH ROW EXECUTE FUNCTION "statement_keep"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "variant_statement" FOR EACH ROW EXECUTE FUNCTION "statement_keep"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "fitment_reading" FOR EACH ROW EXECUTE FUNCTION "statement_keep"();

CREATE FUNCTION "authorised_package_keep"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'a package stays with the yes it was given' USING ERRCODE = 'RW001';
END
$$;
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "authorised_package" FOR EACH ROW EXECUTE FUNCTION "authorised_package_keep"();

CREATE FUNCTION "work_package_keep"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'work package % was offered and is not deleted', OLD."id" USING ERRCODE = 'RW001';
END
$$;
CREATE TRIGGER "kept" BEFORE DELETE ON "work_package" FOR EACH ROW EXECUTE FUNCTION "work_package_keep"();

-- Squared means that nothing is owed either way
CREATE OR REPLACE FUNCTION "job_take_step"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  owed text;
BEGIN
  UPDATE "job" SET "stage" = NEW."to" WHERE "id" = NEW."job_id" AND "stage" = NEW."from";
  IF NOT FOUND THEN
    RAISE EXCEPTION 'job % is not at stage %', NEW."job_id", NEW."from" USING ERRCODE = 'RW002';
  END IF;
  IF NEW."to" = 'squared' THEN
    SELECT string_agg("kind", ', ' ORDER BY "kind") INTO owed FROM "job_debt" WHERE "job_id" = NEW."job_id" AND "ended_at" IS NULL;
    IF owed IS NOT NULL THEN
      RAISE EXCEPTION 'job %: not squared while this is owed: %', NEW."job_id", owed USING ERRCODE = 'RW006';
    END IF;
  END IF;
  RETURN NEW;
END
$$;

-- A debt that opens takes the job's row first, as a stage does: a job is not squared past a debt that is being written. On a
-- squared job it may open all the same: something is owed again, and the job goes back to keys-out.
CREATE FUNCTION "job_debt_hold_job"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM 1 FROM "job" WHERE "id" = NEW."job_id" FOR NO KEY UPDATE;
  RETURN NEW;
END
$$;
CREATE TRIGGER "job_debt_holds_job" BEFORE INSERT OR UPDATE ON "job_debt" FOR EACH ROW WHEN (NEW."ended_at" IS NULL)
  EXECUTE FUNCTION "job_debt_hold_job"();

-- Waste is corrected by an entry of its own that says why; litres in and litres fetched stay above zero
ALTER TABLE "waste_entry" DROP CONSTRAINT "waste_entry_litres";
ALTER TABLE "waste_entry" ADD CONSTRAINT "waste_entry_litres" CHECK (CASE "direction"
  WHEN 'in' THEN "volume_l" > 0
  WHEN 'collected' THEN "volume_l" > 0 AND btrim("carrier") <> '' AND btrim("document") <> ''
  WHEN 'correction' THEN "volume_l" <> 0 AND btrim("note") <> ''
  ELSE false END);
