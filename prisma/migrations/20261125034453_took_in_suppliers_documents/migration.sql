-- AlterTable
ALTER TABLE "part_unit" ADD COLUMN     "open_net" DECIMAL(12,2) NOT NULL DEFAULT 0;

-- CreateTable
CREATE TABLE "return_note" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "supplier_id" UUID NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "made_by_id" UUID NOT NULL,
    "handed_over_at" TIMESTAMPTZ(3),
    "evidence" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "return_note_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "return_note_unit" (
    "note_id" UUID NOT NULL,
    "unit_id" UUID NOT NULL,

    CONSTRAINT "return_note_unit_pkey" PRIMARY KEY ("note_id","unit_id")
);

-- CreateTable
CREATE TABLE "supplier_document" (
    "id" UUID NOT NULL,
    "supplier_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "dated_on" DATE NOT NULL,
    "total" DECIMAL(14,2) NOT NULL,
    "gross" DECIMAL(14,2),
    "import_id" UUID,
    "entered_by_id" UUID NOT NULL,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),
    "withdrawn_by_id" UUID,
    "withdrawn_why" TEXT,

    CONSTRAINT "supplier_document_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "supplier_line" (
    "id" UUID NOT NULL,
    "document_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "number" TEXT NOT NULL DEFAULT '',
    "reference" TEXT NOT NULL DEFAULT '',
    "part" TEXT NOT NULL DEFAULT '',
    "text" TEXT NOT NULL DEFAULT '',
    "quantity" INTEGER NOT NULL DEFAULT 1,
    "amount" DECIMAL(12,2) NOT NULL,
    "dated_on" DATE,
    "kind" TEXT,

    CONSTRAINT "supplier_line_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "line_match" (
    "id" UUID NOT NULL,
    "line_id" UUID NOT NULL,
    "side" TEXT NOT NULL,
    "unit_id" UUID,
    "names_id" UUID,
    "return_note_id" UUID,
    "role" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "certainty" TEXT NOT NULL,
    "reasons" TEXT[],
    "share" DECIMAL(12,2) NOT NULL,
    "fee" DECIMAL(12,2) NOT NULL DEFAULT 0,
    "money_id" BIGINT,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "decided_at" TIMESTAMPTZ(3),
    "decided_by_id" UUID,
    "ended_at" TIMESTAMPTZ(3),
    "ended_by_id" UUID,
    "ended_why" TEXT,

    CONSTRAINT "line_match_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "supplier_difference" (
    "id" UUID NOT NULL,
    "document_id" UUID NOT NULL,
    "line_id" UUID,
    "unit_id" UUID,
    "names_id" UUID,
    "return_note_id" UUID,
    "kind" TEXT NOT NULL,
    "amount" DECIMAL(12,2) NOT NULL,
    "is_with_tax" BOOLEAN NOT NULL,
    "words" TEXT NOT NULL,
    "found_at" TIMESTAMPTZ(3) NOT NULL,
    "settled_at" TIMESTAMPTZ(3),
    "settled_by_id" UUID,
    "settled_why" TEXT,

    CONSTRAINT "supplier_difference_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "supplier_import" (
    "id" UUID NOT NULL,
    "supplier_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "file_name" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "reading" JSONB NOT NULL,
    "uploaded_at" TIMESTAMPTZ(3) NOT NULL,
    "uploaded_by_id" UUID NOT NULL,
    "committed_at" TIMESTAMPTZ(3),
    "committed_by_id" UUID,

    CONSTRAINT "supplier_import_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "supplier_columns" (
    "supplier_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "reading" JSONB NOT NULL,
    "saved_at" TIMESTAMPTZ(3) NOT NULL,
    "saved_by_id" UUID NOT NULL,

    CONSTRAINT "supplier_columns_pkey" PRIMARY KEY ("supplier_id","kind")
);

-- CreateIndex
CREATE UNIQUE INDEX "return_note_number_key" ON "return_note"("number");

-- CreateIndex
CREATE INDEX "return_note_supplier_id_idx" ON "return_note"("supplier_id");

-- CreateIndex
CREATE INDEX "return_note_unit_unit_id_idx" ON "return_note_unit"("unit_id");

-- CreateIndex
CREATE INDEX "supplier_document_supplier_id_dated_on_idx" ON "supplier_document"("supplier_id", "dated_on");

-- CreateIndex
CREATE UNIQUE INDEX "supplier_line_document_id_position_key" ON "supplier_line"("document_id", "position");

-- CreateIndex
CREATE UNIQUE INDEX "line_match_money_id_key" ON "line_match"("money_id");

-- CreateIndex
CREATE INDEX "line_match_line_id_idx" ON "line_match"("line_id");

-- CreateIndex
CREATE INDEX "line_match_unit_id_idx" ON "line_match"("unit_id");

-- CreateIndex
CREATE INDEX "supplier_difference_document_id_idx" ON "supplier_difference"("document_id");

-- CreateIndex
CREATE INDEX "supplier_import_supplier_id_sha256_idx" ON "supplier_import"("supplier_id", "sha256");

-- AddForeignKey
ALTER TABLE "return_note" ADD CONSTRAINT "return_note_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "supplier"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "return_note_unit" ADD CONSTRAINT "return_note_unit_note_id_fkey" FOREIGN KEY ("note_id") REFERENCES "return_note"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "return_note_unit" ADD CONSTRAINT "return_note_unit_unit_id_fkey" FOREIGN KEY ("unit_id") REFERENCES "part_unit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_document" ADD CONSTRAINT "supplier_document_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "supplier"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_document" ADD CONSTRAINT "supplier_document_import_id_fkey" FOREIGN KEY ("import_id") REFERENCES "supplier_import"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_line" ADD CONSTRAINT "supplier_line_document_id_fkey" FOREIGN KEY ("document_id") REFERENCES "supplier_document"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "line_match" ADD CONSTRAINT "line_match_line_id_fkey" FOREIGN KEY ("line_id") REFERENCES "supplier_line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "line_match" ADD CONSTRAINT "line_match_unit_id_fkey" FOREIGN KEY ("unit_id") REFERENCES "part_unit"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "line_match" ADD CONSTRAINT "line_match_names_id_fkey" FOREIGN KEY ("names_id") REFERENCES "supplier_document"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "line_match" ADD CONSTRAINT "line_match_return_note_id_fkey" FOREIGN KEY ("return_note_id") REFERENCES "return_note"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_difference" ADD CONSTRAINT "supplier_difference_document_id_fkey" FOREIGN KEY ("document_id") REFERENCES "supplier_document"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_import" ADD CONSTRAINT "supplier_import_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "supplier"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_columns" ADD CONSTRAINT "supplier_columns_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "supplier"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What must never be, continued. SQLSTATE of our own triggers, beside those of the earlier migrations:
--   RW010 a line of a supplier's paper laid on more than it says, or an entry of another unit's account laid under it

-- A unit's open amount is the sum of its account, always. The entry's own trigger holds the unit's row by then.
UPDATE "part_unit" u SET "open_net" = m."open" FROM (
  SELECT "unit_id", sum(CASE WHEN "kind" = 'charged' THEN "amount_net" ELSE -"amount_net" END) AS "open" FROM "unit_money" GROUP BY 1
) AS m WHERE m."unit_id" = u."id" AND m."open" <> 0;

CREATE FUNCTION "unit_money_add_up"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "part_unit" SET "open_net" = "open_net" + CASE WHEN NEW."kind" = 'charged' THEN NEW."amount_net" ELSE -NEW."amount_net" END
    WHERE "id" = NEW."unit_id";
  RETURN NEW;
END
$$;
CREATE TRIGGER "unit_money_adds_up" AFTER INSERT ON "unit_money" FOR EACH ROW EXECUTE FUNCTION "unit_money_add_up"();

CREATE FUNCTION "unit_keep_open_net"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF pg_trigger_depth() < 2 THEN
    RAISE EXCEPTION 'unit %: what is open changes only by an entry', NEW."id" USING ERRCODE = 'RW002';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "unit_keeps_open_net" BEFORE UPDATE ON "part_unit" FOR EACH ROW WHEN (OLD."open_net" IS DISTINCT FROM NEW."open_net")
  EXECUTE FUNCTION "unit_keep_open_net"();
CREATE TRIGGER "unit_starts_with_nothing_open" BEFORE INSERT ON "part_unit" FOR EACH ROW WHEN (NEW."open_net" <> 0)
  EXECUTE FUNCTION "unit_keep_open_net"();

-- Return notes: what left keeps its evidence
ALTER TABLE "return_note" ADD CONSTRAINT "return_note_left_with_evidence" CHECK ("handed_over_at" IS NULL OR btrim("evidence") <> '');

-- Suppliers' documents
ALTER TABLE "supplier_document" ADD CONSTRAINT "supplier_document_kind" CHECK ("kind" IN ('invoice', 'credit-note', 'statement')
  AND btrim("number") <> '' AND ("kind" <> 'statement' OR "gross" IS NULL));
ALTER TABLE "supplier_document" ADD CONSTRAINT "supplier_document_withdrawal" CHECK (("withdrawn_at" IS NULL) = ("withdrawn_by_id" IS NULL)
  AND ("withdrawn_at" IS NULL) = (btrim(coalesce("withdrawn_why", '')) = ''));
CREATE UNIQUE INDEX "supplier_document_once" ON "supplier_document" ("supplier_id", "kind", lower("number")) WHERE "withdrawn_at" IS NULL;
ALTER TABLE "supplier_line" ADD CONSTRAINT "supplier_line_quantity" CHECK ("quantity" > 0 AND ("kind" IS NULL
  OR "kind" IN ('credit', 'invoice', 'payment', 'carriage', 'restocking', 'core-charge', 'balance')));
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "supplier_line" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
ALTER TABLE "supplier_import" ADD CONSTRAINT "supplier_import_kind" CHECK ("kind" IN ('credit-lines', 'statement')
  AND ("committed_at" IS NULL) = ("committed_by_id" IS NULL));
CREATE UNIQUE INDEX "supplier_import_once" ON "supplier_import" ("supplier_id", "kind", "sha256") WHERE "committed_at" IS NOT NULL;
ALTER TABLE "supplier_columns" ADD CONSTRAINT "supplier_columns_kind" CHECK ("kind" IN ('credit-lines', 'statement'));

CREATE FUNCTION "supplier_document_keep"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  withdrawal CONSTANT text[] := ARRAY['withdrawn_at', 'withdrawn_by_id', 'withdrawn_why'];
BEGIN
  IF TG_OP = 'UPDATE' AND OLD."withdrawn_at" IS NULL AND NEW."withdrawn_at" IS NOT NULL
    AND to_jsonb(NEW) - withdrawal = to_jsonb(OLD) - withdrawal THEN
    RETURN NEW;
  END IF;
  RAISE EXCEPTION 'a supplier''s document can be withdrawn once, and not changed or deleted' USING ERRCODE = 'RW001';
END
$$;
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "supplier_document" FOR EACH ROW EXECUTE FUNCTION "supplier_document_keep"();

-- Matches: each unit gets at most one whole line of a kind, each document of a statement at most one whole line of it
ALTER TABLE "line_match" ADD CONSTRAINT "line_match_on_one" CHECK (num_nonnulls("unit_id", "names_id", "return_note_id") = 1
  AND ("side" = 'statement') = ("unit_id" IS NULL) AND "side" IN ('charge', 'credit', 'statement'));
ALTER TABLE "line_match" ADD CONSTRAINT "line_match_words" CHECK ("role" IN ('whole', 'part', 'twice', 'same')
  AND "state" IN ('proposed', 'laid', 'ended') AND "certainty" IN ('sure', 'unsure', 'by-hand'));
ALTER TABLE "line_match" ADD CONSTRAINT "line_match_history" CHECK (
  ("state" = 'proposed') <= ("decided_at" IS NULL AND "ended_at" IS NULL AND "money_id" IS NULL)
  AND ("state" = 'laid') <= ("decided_at" IS NOT NULL AND "decided_by_id" IS NOT NULL AND "ended_at" IS NULL)
  AND ("state" = 'ended') = ("ended_at" IS NOT NULL AND "ended_by_id" IS NOT NULL));
ALTER TABLE "line_match" ADD CONSTRAINT "line_match_credits" CHECK (NOT ("side" = 'credit' AND "state" = 'laid' AND "role" <> 'same'
  AND "share" <> "fee") OR "money_id" IS NOT NULL);
CREATE UNIQUE INDEX "line_match_one_line_a_unit" ON "line_match" ("unit_id", "side") WHERE "state" = 'laid' AND "role" = 'whole';
CREATE UNIQUE INDEX "line_match_once_on_a_unit" ON "line_match" ("line_id", "unit_id") WHERE "state" <> 'ended';

CREATE FUNCTION "line_match_hold"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  fixed CONSTANT text[] := ARRAY['role', 'state', 'money_id', 'decided_at', 'decided_by_id', 'ended_at', 'ended_by_id', 'ended_why'];
  line record;
  laid record;
BEGIN
  IF TG_OP = 'DELETE' THEN
    RAISE EXCEPTION 'a match is ended, not deleted' USING ERRCODE = 'RW001';
  END IF;
  IF TG_OP = 'UPDATE' AND (OLD."state" = 'ended' OR (OLD."state" = 'laid' AND NEW."state" = 'proposed')
    OR to_jsonb(NEW) - fixed <> to_jsonb(OLD) - fixed
    OR (OLD."money_id" IS NOT NULL AND NEW."money_id" IS DISTINCT FROM OLD."money_id")) THEN
    RAISE EXCEPTION 'a match goes on to laid or ended, and stays what it was' USING ERRCODE = 'RW001';
  END IF;
  IF NEW."money_id" IS NOT NULL
    AND NOT EXISTS (SELECT 1 FROM "unit_money" WHERE "id" = NEW."money_id" AND "unit_id" = NEW."unit_id") THEN
    RAISE EXCEPTION 'match %: the entry is none of unit %', NEW."id", NEW."unit_id" USING ERRCODE = 'RW010';
  END IF;
  IF NEW."state" <> 'laid' THEN
    RETURN NEW;
  END IF;
  SELECT l."quantity", l."amount", l."document_id", d."withdrawn_at", d."supplier_id" INTO line
    FROM "supplier_line" l JOIN "supplier_document" d ON d."id" = l."document_id" WHERE l."id" = NEW."line_id" FOR UPDATE OF l;
  IF line."withdrawn_at" IS NOT NULL THEN
    RAISE EXCEPTION 'match %: its document is withdrawn', NEW."id" USING ERRCODE = 'RW010';
  END IF;
  SELECT count(*) AS "units", coalesce(sum("share"), 0) AS "shares" INTO laid
    FROM "line_match" WHERE "line_id" = NEW."line_id" AND "state" = 'laid' AND "id" <> NEW."id";
  IF laid."units" + 1 > line."quantity" OR (NEW."unit_id" IS NOT NULL AND laid."shares" + NEW."share" > abs(line."amount")) THEN
    RAISE EXCEPTION 'match %: its line says % for % pieces, of which % for % are laid', NEW."id", line."amount", line."quantity",
      laid."shares", laid."units" USING ERRCODE = 'RW010';
  END IF;
  IF NEW."unit_id" IS NOT NULL AND NOT EXISTS (SELECT 1 FROM "part_unit" u JOIN "part_variant" v ON v."id" = u."variant_id"
    WHERE u."id" = NEW."unit_id" AND v."supplier_id" = line."supplier_id") THEN
    RAISE EXCEPTION 'match %: the unit is of another supplier', NEW."id" USING ERRCODE = 'RW010';
  END IF;
  IF NEW."side" = 'statement' AND NEW."role" = 'whole' AND EXISTS (SELECT 1 FROM "line_match" m JOIN "supplier_line" l ON l."id" = m."line_id"
    WHERE l."document_id" = line."document_id" AND m."state" = 'laid' AND m."role" = 'whole' AND m."id" <> NEW."id"
      AND (m."names_id" = NEW."names_id" OR m."return_note_id" = NEW."return_note_id")) THEN
    RAISE EXCEPTION 'match %: another line of this statement is laid there', NEW."id" USING ERRCODE = 'RW010';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "line_match_holds" BEFORE INSERT OR UPDATE OR DELETE ON "line_match" FOR EACH ROW EXECUTE FUNCTION "line_match_hold"();

-- Differences: settled once, by somebody, with a reason
ALTER TABLE "supplier_difference" ADD CONSTRAINT "supplier_difference_kind" CHECK ("amount" >= 0
  AND "kind" IN ('not-credited', 'short', 'over', 'restocking-beyond-terms', 'unknown', 'twice', 'price'));
ALTER TABLE "supplier_difference" ADD CONSTRAINT "supplier_difference_settled" CHECK (("settled_at" IS NULL) = ("settled_by_id" IS NULL)
  AND ("settled_at" IS NULL) = (btrim(coalesce("settled_why", '')) = ''));
CREATE UNIQUE INDEX "supplier_difference_once" ON "supplier_difference" ("kind", coalesce("line_id", "unit_id", "names_id", "return_note_id"),
  coalesce("unit_id", "names_id", "return_note_id", "line_id")) WHERE "settled_at" IS NULL;
CREATE FUNCTION "supplier_difference_keep"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  settling CONSTANT text[] := ARRAY['settled_at', 'settled_by_id', 'settled_why'];
BEGIN
  IF TG_OP = 'UPDATE' AND OLD."settled_at" IS NULL AND to_jsonb(NEW) - settling = to_jsonb(OLD) - settling THEN
    RETURN NEW;
  END IF;
  RAISE EXCEPTION 'a difference is settled once, and not changed or deleted' USING ERRCODE = 'RW001';
END
$$;
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "supplier_difference" FOR EACH ROW EXECUTE FUNCTION "supplier_difference_keep"();
