import type { ReactNode } from 'react';

export type TimelineEntry = {
  key: string;
  dateTime: string;
  on: string;
  who?: string | undefined;
  what: ReactNode;
  detail?: ReactNode;
};

/**
 * Who did what and when, in the order given. `on` is the shown time in the workshop's zone, `dateTime` its ISO form.
 *
 * ```tsx
 * <Timeline label="What happened" entries={[{ key: '1', dateTime: '2026-12-01T09:40:00Z', on: '1 Dec 2026, 09:40',
 *   who: 'Ines', what: 'Parcel taken in', detail: 'Seal whole; case present, power supply missing.' }]} />
 * ```
 */
export function Timeline({ label, entries }: { label: string; entries: readonly TimelineEntry[] }) {
  return (
    <ol className="timeline" aria-label={label}>
      {entries.map((entry) => (
        <li key={entry.key}>
          <p className="timeline-when">
            <time dateTime={entry.dateTime}>{entry.on}</time>
            {entry.who ? <span> · {entry.who}</span> : null}
          </p>
          <p className="timeline-what">{entry.what}</p>
          {entry.detail ? <div className="timeline-detail">{entry.detail}</div> : null}
        </li>
      ))}
    </ol>
  );
}
