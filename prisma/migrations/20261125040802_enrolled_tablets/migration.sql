-- AlterTable
ALTER TABLE "session" ADD COLUMN     "sign_in_id" UUID;

-- AlterTable
ALTER TABLE "staff" ADD COLUMN     "pin_hash" TEXT;

-- CreateTable
CREATE TABLE "tablet" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "code_hash" TEXT,
    "code_until" TIMESTAMPTZ(3),
    "token_hash" TEXT,
    "created_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "enrolled_at" TIMESTAMPTZ(3),
    "last_seen_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),
    "revoked_by_id" UUID,

    CONSTRAINT "tablet_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "tablet_sign_in" (
    "id" UUID NOT NULL,
    "tablet_id" UUID NOT NULL,
    "staff_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "tablet_sign_in_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "tablet_stray" (
    "id" UUID NOT NULL,
    "tablet_id" UUID NOT NULL,
    "device_seq" INTEGER,
    "sent" JSONB NOT NULL,
    "why" TEXT NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "looked_at_at" TIMESTAMPTZ(3),
    "looked_at_by_id" UUID,

    CONSTRAINT "tablet_stray_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "tablet_code_hash_key" ON "tablet"("code_hash");

-- CreateIndex
CREATE UNIQUE INDEX "tablet_token_hash_key" ON "tablet"("token_hash");

-- CreateIndex
CREATE INDEX "tablet_sign_in_tablet_id_idx" ON "tablet_sign_in"("tablet_id");

-- CreateIndex
CREATE INDEX "tablet_stray_tablet_id_idx" ON "tablet_stray"("tablet_id");

-- AddForeignKey
ALTER TABLE "tablet_sign_in" ADD CONSTRAINT "tablet_sign_in_tablet_id_fkey" FOREIGN KEY ("tablet_id") REFERENCES "tablet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "tablet_stray" ADD CONSTRAINT "tablet_stray_tablet_id_fkey" FOREIGN KEY ("tablet_id") REFERENCES "tablet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "tablet" ADD CONSTRAINT "tablet_named" CHECK (btrim("name") <> '');
ALTER TABLE "tablet" ADD CONSTRAINT "tablet_by_code_or_token" CHECK (("code_hash" IS NULL OR "token_hash" IS NULL)
  AND ("code_hash" IS NULL) = ("code_until" IS NULL) AND ("token_hash" IS NULL OR "enrolled_at" IS NOT NULL)
  AND ("revoked_at" IS NULL OR "token_hash" IS NULL));
CREATE UNIQUE INDEX "tablet_name_in_use" ON "tablet" (lower("name")) WHERE "revoked_at" IS NULL;
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "tablet_sign_in" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();

-- What no card could take is looked at once, and otherwise stays as it came
CREATE FUNCTION "tablet_stray_keep"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  look CONSTANT text[] := ARRAY['looked_at_at', 'looked_at_by_id'];
BEGIN
  IF TG_OP = 'UPDATE' AND OLD."looked_at_at" IS NULL AND NEW."looked_at_at" IS NOT NULL
    AND to_jsonb(NEW) - look = to_jsonb(OLD) - look THEN
    RETURN NEW;
  END IF;
  RAISE EXCEPTION 'tablet_stray is append-only' USING ERRCODE = 'RW001';
END
$$;
CREATE TRIGGER "kept" BEFORE UPDATE OR DELETE ON "tablet_stray" FOR EACH ROW EXECUTE FUNCTION "tablet_stray_keep"();
