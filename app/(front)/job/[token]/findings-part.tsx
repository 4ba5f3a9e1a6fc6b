import { PhotoStrip } from '@/app/ui/photos/photo';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { PartProps } from './part-props';
import { photosOf } from './photos-of';

/** What the workshop has seen, done and photographed so far. */
export function FindingsPart({ job, token, workshop }: PartProps) {
  const on = (at: Date) => formatDay(dayInZone(at, workshop.timeZone), workshop.locale, 'weekday');
  const photos = photosOf(job, token, ({ purpose }) => purpose !== 'inspection' && purpose !== 'message');
  if (job.findings.length === 0 && job.work.length === 0 && photos.length === 0) return null;
  return (
    <section aria-labelledby="seen">
      <h2 id="seen">What we have seen and done</h2>
      {job.findings.length > 0 ? (
        <>
          <h3>Findings</h3>
          <ul className="plain-list">
            {job.findings.map((finding) => (
              <li key={finding.id}>{`${on(finding.at)}: ${finding.text}`}</li>
            ))}
          </ul>
        </>
      ) : null}
      {job.work.length > 0 ? (
        <>
          <h3>Work</h3>
          <ul className="plain-list">
            {job.work.map((entry) => (
              <li key={entry.id}>{`${on(entry.at)}: ${entry.text}`}</li>
            ))}
          </ul>
        </>
      ) : null}
      <PhotoStrip label="Photos of your unit" photos={photos} />
    </section>
  );
}
