-- DropForeignKey
ALTER TABLE "payment" DROP CONSTRAINT "payment_invoice_id_fkey";

-- AlterTable
ALTER TABLE "job_line" ADD COLUMN     "discount" DECIMAL(12,2),
ADD COLUMN     "discount_for" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "payment" ADD COLUMN     "job_id" UUID,
ADD COLUMN     "why" TEXT NOT NULL DEFAULT '',
ALTER COLUMN "invoice_id" DROP NOT NULL;

-- AlterTable
ALTER TABLE "workshop" ADD COLUMN     "cash_accounting" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "company_number" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "consumables_most" DECIMAL(10,2),
ADD COLUMN     "consumables_pct" DECIMAL(5,2) NOT NULL DEFAULT 0,
ADD COLUMN     "deposit_form" TEXT NOT NULL DEFAULT 'tax-document',
ADD COLUMN     "exemption_words" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "paper" TEXT NOT NULL DEFAULT 'a4',
ADD COLUMN     "parts_rule" JSONB,
ADD COLUMN     "pdf_form" TEXT NOT NULL DEFAULT 'hybrid',
ADD COLUMN     "simplified_limit" DECIMAL(12,2),
ADD COLUMN     "vat_category" TEXT NOT NULL DEFAULT 'S';

-- CreateTable
CREATE TABLE "job_adjustment" (
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "amount" DECIMAL(12,2) NOT NULL,
    "reason" TEXT NOT NULL,
    "vat_category" TEXT NOT NULL,
    "vat_rate_pct" DECIMAL(5,2) NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "removed_at" TIMESTAMPTZ(3),

    CONSTRAINT "job_adjustment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job_paper" (
    "job_id" UUID NOT NULL,
    "advice" TEXT NOT NULL DEFAULT '',
    "order_reference" TEXT NOT NULL DEFAULT '',
    "buyer_reference" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "job_paper_pkey" PRIMARY KEY ("job_id")
);

-- CreateTable
CREATE TABLE "menu_price" (
    "template_key" TEXT NOT NULL,
    "price_net" DECIMAL(10,2) NOT NULL,

    CONSTRAINT "menu_price_pkey" PRIMARY KEY ("template_key")
);

-- CreateTable
CREATE TABLE "invoice_prepayment" (
    "payment_id" UUID NOT NULL,
    "invoice_id" UUID NOT NULL,

    CONSTRAINT "invoice_prepayment_pkey" PRIMARY KEY ("payment_id")
);

-- CreateTable
CREATE TABLE "cash_up" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by_id" UUID NOT NULL,
    "float_before" DECIMAL(14,2) NOT NULL,
    "banked" DECIMAL(14,2) NOT NULL,
    "float_after" DECIMAL(14,2) NOT NULL,

    CONSTRAINT "cash_up_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "cash_up_line" (
    "cash_up_id" UUID NOT NULL,
    "method" TEXT NOT NULL,
    "expected" DECIMAL(14,2) NOT NULL,
    "counted" DECIMAL(14,2) NOT NULL,
    "why" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "cash_up_line_pkey" PRIMARY KEY ("cash_up_id","method")
);

-- CreateTable
CREATE TABLE "cash_up_payment" (
    "payment_id" UUID NOT NULL,
    "cash_up_id" UUID NOT NULL,

    CONSTRAINT "cash_up_payment_pkey" PRIMARY KEY ("payment_id")
);

-- CreateIndex
CREATE INDEX "job_adjustment_job_id_idx" ON "job_adjustment"("job_id");

-- CreateIndex
CREATE UNIQUE INDEX "cash_up_number_key" ON "cash_up"("number");

-- CreateIndex
CREATE INDEX "cash_up_payment_cash_up_id_idx" ON "cash_up_payment"("cash_up_id");

-- CreateIndex
CREATE INDEX "payment_job_id_idx" ON "payment"("job_id");

-- AddForeignKey
ALTER TABLE "job_adjustment" ADD CONSTRAINT "job_adjustment_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_paper" ADD CONSTRAINT "job_paper_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "payment" ADD CONSTRAINT "payment_invoice_id_fkey" FOREIGN KEY ("invoice_id") REFERENCES "invoice"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "payment" ADD CONSTRAINT "payment_job_id_fkey" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice_prepayment" ADD CONSTRAINT "invoice_prepayment_payment_id_fkey" FOREIGN KEY ("payment_id") REFERENCES "payment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice_prepayment" ADD CONSTRAINT "invoice_prepayment_invoice_id_fkey" FOREIGN KEY ("invoice_id") REFERENCES "invoice"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "cash_up_line" ADD CONSTRAINT "cash_up_line_cash_up_id_fkey" FOREIGN KEY ("cash_up_id") REFERENCES "cash_up"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "cash_up_payment" ADD CONSTRAINT "cash_up_payment_payment_id_fkey" FOREIGN KEY ("payment_id") REFERENCES "payment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "cash_up_payment" ADD CONSTRAINT "cash_up_payment_cash_up_id_fkey" FOREIGN KEY ("cash_up_id") REFERENCES "cash_up"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- The till's settings and books. SQLSTATE as before; RW008 and RW009 now also hold per category and rate, and for money on account.
ALTER TABLE "workshop" ADD CONSTRAINT "workshop_paper" CHECK ("paper" IN ('a4', 'letter')
  AND "pdf_form" IN ('plain', 'hybrid', 'hybrid-for-business') AND "vat_category" IN ('S', 'Z', 'E', 'O')
  AND "deposit_form" IN ('tax-document', 'prepaid') AND ("simplified_limit" IS NULL OR "simplified_limit" > 0)
  AND "consumables_pct" BETWEEN 0 AND 100 AND ("consumables_most" IS NULL OR "consumables_most" >= 0));
ALTER TABLE "job_line" ADD CONSTRAINT "job_line_discount" CHECK ("discount" IS NULL OR ("discount" > 0 AND btrim("discount_for") <> ''));
ALTER TABLE "job_adjustment" ADD CONSTRAINT "job_adjustment_facts"
  CHECK ("kind" IN ('allowance', 'charge') AND "amount" > 0 AND btrim("reason") <> '' AND "vat_rate_pct" BETWEEN 0 AND 100);
ALTER TABLE "menu_price" ADD CONSTRAINT "menu_price_above_zero" CHECK ("price_net" > 0);
ALTER TABLE "payment" ADD CONSTRAINT "payment_of_one" CHECK (("invoice_id" IS NULL) <> ("job_id" IS NULL));
ALTER TABLE "payment" ADD CONSTRAINT "payment_back_says_why" CHECK ("amount" > 0 OR btrim("why") <> '') NOT VALID;
ALTER TABLE "cash_up" ADD CONSTRAINT "cash_up_drawer" CHECK ("banked" >= 0 AND "float_after" >= 0);
ALTER TABLE "cash_up_line" ADD CONSTRAINT "cash_up_line_says_why" CHECK ("expected" = "counted" OR btrim("why") <> '');

CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "invoice_prepayment" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "cash_up" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "cash_up_line" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "cash_up_payment" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();

-- A credit note also stays within what is left of each category and rate, in net and in tax; and a deposit that an invoice which
-- stands has taken off is not credited beside it. Waits at the original's series like the trigger on the sums.
CREATE FUNCTION "credit_note_stay_within_rates"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  beyond record;
  taken text;
BEGIN
  PERFORM 1 FROM "invoice" i JOIN "invoice_series" s ON s."key" = i."series_key" WHERE i."id" = NEW."original_id" FOR UPDATE OF s;
  WITH rows AS (
    SELECT (d."id" IS NULL) AS "is_new", d."part", r ->> 'category' AS "category", coalesce((r ->> 'rate')::numeric, -1) AS "rate",
      (r ->> 'taxable')::numeric AS "taxable", (r ->> 'tax')::numeric AS "tax"
    FROM (
      SELECT i."id", 'original' AS "part", i."document" FROM "invoice" i WHERE i."id" = NEW."original_id"
      UNION ALL
      SELECT i."id", 'credit', i."document" FROM "invoice" i WHERE i."original_id" = NEW."original_id" AND i."kind" = 'credit-note'
      UNION ALL
      SELECT NULL, 'credit', NEW."document"
    ) AS d
    CROSS JOIN LATERAL jsonb_array_elements(coalesce(d."document" -> 'totals' -> 'vat', '[]')) AS r
  ), sums AS (
    SELECT "category", "rate", coalesce(sum("taxable") FILTER (WHERE "part" = 'original'), 0) AS "net",
      coalesce(sum("tax") FILTER (WHERE "part" = 'original'), 0) AS "tax",
      coalesce(sum("taxable") FILTER (WHERE "part" = 'credit'), 0) AS "net_back",
      coalesce(sum("tax") FILTER (WHERE "part" = 'credit'), 0) AS "tax_back"
    FROM rows GROUP BY "category", "rate" HAVING bool_or("is_new")
  )
  SELECT * INTO beyond FROM sums
    WHERE "net_back" NOT BETWEEN least("net", 0) AND greatest("net", 0) OR "tax_back" NOT BETWEEN least("tax", 0) AND greatest("tax", 0)
    LIMIT 1;
  IF FOUND THEN
    RAISE EXCEPTION '%: % (tax %) at % % would be credited of % (tax %)', NEW."number", beyond."net_back", beyond."tax_back",
      beyond."category", beyond."rate", beyond."net", beyond."tax" USING ERRCODE = 'RW008';
  END IF;
  SELECT f."number" INTO taken
    FROM "invoice" o
    JOIN "invoice" f ON f."job_id" = o."job_id" AND f."kind" IN ('invoice', 'simplified')
      AND f."document" -> 'preceding' @> jsonb_build_array(jsonb_build_object('number', o."number"))
    CROSS JOIN LATERAL (SELECT coalesce(sum("tax_exclusive"), 0) AS "net", coalesce(sum("tax_inclusive"), 0) AS "gross"
      FROM "invoice" WHERE "original_id" = f."id" AND "kind" = 'credit-note') AS credited
    WHERE o."id" = NEW."original_id" AND o."kind" = 'deposit'
      AND (f."tax_exclusive" <> credited."net" OR f."tax_inclusive" <> credited."gross")
    LIMIT 1;
  IF FOUND THEN
    RAISE EXCEPTION '%: the deposit is taken off %, which stands', NEW."number", taken USING ERRCODE = 'RW008';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "credit_note_stays_within_rates" BEFORE INSERT ON "invoice" FOR EACH ROW WHEN (NEW."kind" = 'credit-note')
  EXECUTE FUNCTION "credit_note_stay_within_rates"();

-- Money on account goes back at most as far as it came and was not taken as prepaid by an invoice.
CREATE FUNCTION "money_on_account_stay_within"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  held numeric;
BEGIN
  PERFORM 1 FROM "job" WHERE "id" = NEW."job_id" FOR UPDATE;
  SELECT coalesce(sum(p."amount"), 0) INTO held FROM "payment" p
    WHERE p."job_id" = NEW."job_id" AND NOT EXISTS (SELECT FROM "invoice_prepayment" t WHERE t."payment_id" = p."id");
  IF held + NEW."amount" < 0 THEN
    RAISE EXCEPTION 'job %: % is more than the % on account', NEW."job_id", -NEW."amount", held USING ERRCODE = 'RW009';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "money_on_account_stays_within" BEFORE INSERT ON "payment" FOR EACH ROW WHEN (NEW."job_id" IS NOT NULL)
  EXECUTE FUNCTION "money_on_account_stay_within"();

-- An invoice takes the money on account of its own job, and nobody else's.
CREATE FUNCTION "prepayment_be_of_its_job"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM "payment" p JOIN "invoice" i ON i."job_id" = p."job_id"
    WHERE p."id" = NEW."payment_id" AND i."id" = NEW."invoice_id" AND i."kind" IN ('invoice', 'simplified')) THEN
    RAISE EXCEPTION 'payment % is not on account of the job of invoice %', NEW."payment_id", NEW."invoice_id" USING ERRCODE = 'RW009';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "prepayment_is_of_its_job" BEFORE INSERT ON "invoice_prepayment" FOR EACH ROW EXECUTE FUNCTION "prepayment_be_of_its_job"();
