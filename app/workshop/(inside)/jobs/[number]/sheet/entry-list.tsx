import { entryText } from '@/lib/bench/rules/entry-text';
import { formatInstant } from '@/lib/calendar/format';
import type { SheetProps } from '../open-sheet';

type Props = Omit<SheetProps, 'job'> & {
  unit: string | null;
  entries: SheetProps['job']['checkEntries'];
};

/** Every entry of one check in order, the failed ones too: what it read, by whom, when. */
export function EntryList({ entries, unit, workshop, staff }: Props) {
  if (entries.length === 0) return null;
  return (
    <ul className="plain-list">
      {entries.map((entry) => (
        <li key={entry.id}>
          {[
            entryText(entry, unit),
            entry.isPassed ? 'passed' : 'failed',
            staff.get(entry.userId)?.initials ?? '',
            formatInstant(entry.at, { locale: workshop.locale, zone: workshop.timeZone }),
            entry.note,
          ]
            .filter((text) => text !== '')
            .join(', ')}
        </li>
      ))}
    </ul>
  );
}
