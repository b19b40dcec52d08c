-- AlterTable
ALTER TABLE "part_unit" ADD COLUMN     "handed_over_at" TIMESTAMPTZ(3);

-- When a unit left last is kept with its move, so that its age need not be looked up in its history.
UPDATE "part_unit" u SET "handed_over_at" = m."at" FROM (
  SELECT "unit_id", max("at") AS "at" FROM "unit_move" WHERE "to" = 'handed-over' GROUP BY 1
) AS m WHERE m."unit_id" = u."id";

CREATE OR REPLACE FUNCTION "unit_take_step"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  open_amount numeric;
BEGIN
  IF NEW."to" = 'handed-over' AND btrim(NEW."evidence") = '' THEN
    RAISE EXCEPTION 'unit %: handed over needs a signature or a tracking number', NEW."unit_id" USING ERRCODE = 'RW005';
  END IF;
  UPDATE "part_unit" SET "place" = NEW."to", "handed_over_at" = CASE WHEN NEW."to" = 'handed-over' THEN NEW."at" ELSE "handed_over_at" END
    WHERE "id" = NEW."unit_id" AND "place" = NEW."from";
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

-- What the shelf and the owner look at is read from indexes alone, however many units have gone before.
CREATE INDEX "part_unit_on_its_way_back" ON "part_unit" ("place") INCLUDE ("variant_id", "open_net", "handed_over_at", "return_by")
  WHERE "place" IN ('set-aside', 'to-return', 'handed-over', 'taken-out');
CREATE INDEX "part_unit_open_at_its_end" ON "part_unit" ("place") INCLUDE ("variant_id", "open_net")
  WHERE "open_net" <> 0 AND "place" IN ('gone-for-good', 'called-off', 'never-came', 'written-off');
CREATE INDEX "unit_money_came_back" ON "unit_money" ("at") INCLUDE ("kind", "amount_net", "unit_id") WHERE "kind" <> 'charged';
CREATE INDEX "unit_move_between" ON "unit_move" ("from", "to");
CREATE INDEX "part_unit_what_for" ON "part_unit"("id", "variant_id", "job_id");
