import type { BookingRepair } from '@/lib/jobs/booking-repair';
import type { DraftAnswers } from '@/lib/jobs/rules/booking';
import type { WorkshopCard } from '@/lib/workshop/card';

export type StepProps = {
  token: string;
  repair: BookingRepair;
  workshop: WorkshopCard;
  answers: DraftAnswers;
};
