import { PhotoStrip } from '@/app/ui/photos/photo';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { PartProps } from './part-props';
import { photosOf } from './photos-of';

/**
 * What the workshop has seen, done and photographed so far. Where a price is asked for, its findings and their photos
 * stand with the question (approval-part.tsx) and not once more here.
 */
export function FindingsPart({ job, token, workshop, isAsked }: PartProps & { isAsked: boolean }) {
  const on = (at: Date) => formatDay(dayInZone(at, workshop.timeZone), workshop.locale, 'weekday');
  const findings = isAsked ? [] : job.findings;
  const elsewhere = ['claim', 'inspection', 'message', 'receipt', ...(isAsked ? ['finding'] : [])];
  const photos = photosOf(job, token, ({ purpose }) => !elsewhere.includes(purpose));
  if (findings.length === 0 && job.work.length === 0 && photos.length === 0) return null;
  return (
    <section aria-labelledby="seen">
      <h2 id="seen">What we have seen and done</h2>
      {findings.length > 0 ? (
        <>
          <h3>Findings</h3>
          <ul className="plain-list">
            {findings.map((finding) => (
              <li key={finding.id} className="written">{`${on(finding.at)}: ${finding.text}`}</li>
            ))}
          </ul>
        </>
      ) : null}
      {job.work.length > 0 ? (
        <>
          <h3>Work</h3>
          <ul className="plain-list">
            {job.work.map((entry) => (
              <li key={entry.id} className="written">{`${on(entry.at)}: ${entry.text}`}</li>
            ))}
          </ul>
        </>
      ) : null}
      <PhotoStrip label="Photos of your unit" photos={photos} />
    </section>
  );
}
