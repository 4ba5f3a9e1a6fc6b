import { z } from 'zod';
import type { InspectionAnswer, InspectionEntry } from './rules/inspection';

const answer = z.enum(['yes', 'no', 'unclear']) satisfies z.ZodType<InspectionAnswer>;

/** One answer of an inspection read back from its row; throws where a row does not fit. */
export function readInspection(row: {
  item: string;
  answer: string;
  photoId: string | null;
}): InspectionEntry {
  return { item: row.item, answer: answer.parse(row.answer), hasPhoto: row.photoId !== null };
}
