-- Until when a unit and a line would have been watched had they not come back: the end that their first paper gave them.
ALTER TABLE "unit_watch" ADD COLUMN "firstEndsOn" DATE;
ALTER TABLE "line_watch" ADD COLUMN "firstEndsOn" DATE;

UPDATE "unit_watch" w SET "firstEndsOn" = o."endsOn" FROM "certificate" o WHERE o."number" = w."number" AND o."revision" = 1;

UPDATE "line_watch" w SET "firstEndsOn" = l."endsOn" FROM "certificate_line" l WHERE l."id" = w."lineId";

ALTER TABLE "unit_watch" ALTER COLUMN "firstEndsOn" SET NOT NULL;
ALTER TABLE "line_watch" ALTER COLUMN "firstEndsOn" SET NOT NULL;
