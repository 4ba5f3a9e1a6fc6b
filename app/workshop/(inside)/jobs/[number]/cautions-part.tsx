import { Notice } from '@/app/ui/page/notice';
import { cautionOf } from '@/lib/bench/rules/cautions';
import { checksOf } from '@/lib/bench/rules/job-sheets';
import { workCautions } from '@/lib/bench/rules/work-cautions';
import type { JobRecord } from '@/lib/jobs/records';

/** What can hurt somebody at this unit, one line each, to unfold. */
export function CautionsPart({ job }: { job: JobRecord }) {
  const keys = workCautions({
    battery: job.model.battery,
    isMainsPowered: job.model.isMainsPowered,
    words: [
      ...[job.repair, ...job.besides.map(({ sheet }) => sheet.repair)].flatMap(({ name, summary }) => [
        name,
        summary,
      ]),
      ...job.partUses.map((use) => use.lot.part.name),
    ],
    onSheet: checksOf(job).map((check) => check.caution),
  });
  return (
    <Notice kind="warn" heading="Take care with this unit">
      <ul className="cautions">
        {keys.map((key) => {
          const caution = cautionOf(key);
          return caution ? (
            <li key={key}>
              <details>
                <summary>{caution.title}</summary>
                <p>{caution.text}</p>
              </details>
            </li>
          ) : null;
        })}
      </ul>
    </Notice>
  );
}
