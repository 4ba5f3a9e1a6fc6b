-- What an owner may ask of everybody who signs in; a workshop that is there already goes on without.
ALTER TABLE "workshop" ADD COLUMN "asksSecondStep" BOOLEAN NOT NULL DEFAULT false;
