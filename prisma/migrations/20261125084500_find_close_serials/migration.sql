-- A serial is found although it was misread (lib/warranty/near-serials.ts): characters that look alike count as one, as
-- lookAlikeKey() has them; tests/warranty compares the two.
CREATE INDEX "job_serial_look_alike" ON "job" (translate("serialKey", 'OQDILJZSGB', '0001112568'));
CREATE INDEX "certificate_serial_look_alike" ON "certificate" (translate("serialKey", 'OQDILJZSGB', '0001112568'));
