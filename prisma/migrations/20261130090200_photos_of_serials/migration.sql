-- Photos of a serial, taken when its unit came, have a purpose of their own: only they settle which unit it is.
UPDATE "photo" SET "purpose" = 'serial' WHERE "purpose" = 'arrival' AND "caption" = 'The serial on arrival';
