-- Working days within which the workshop says that it answers.
ALTER TABLE "workshop" ADD COLUMN "answerDays" INTEGER NOT NULL DEFAULT 2;
