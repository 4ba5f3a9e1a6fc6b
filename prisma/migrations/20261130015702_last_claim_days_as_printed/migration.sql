-- The last day to open a claim as a certificate prints it, which no later change of closing days or holidays takes back. Of lines
-- issued before it is not known: they are counted anew each time, as until now.
ALTER TABLE "certificate_line" ADD COLUMN     "lastClaimDay" DATE;
