import { Tag } from '@/app/ui/page/tag';
import { formatDay } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import type { AnswerDue } from '@/lib/jobs/rules/answer-due';

/** Until when an answer was promised, or by how much it is late. */
export function AnswerTag({ due, locale }: { due: AnswerDue; locale: string }) {
  return due.daysOver > 0 ? (
    <Tag tone="stop">{`answer ${workingDaysWords(due.daysOver)} late`}</Tag>
  ) : (
    <Tag tone="now">{`answer by ${formatDay(due.on, locale, 'short')}`}</Tag>
  );
}
