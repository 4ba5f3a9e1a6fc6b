import type { ReactNode } from 'react';
import { LessonLink } from '@/app/ui/docket/lesson-link';
import { cautionOf } from '@/lib/bench/rules/cautions';
import { limitsText } from '@/lib/bench/rules/checks';
import type { SheetVersion } from '@/lib/catalogue/staff-records';

type Check = SheetVersion['checks'][number];
type Props = { checks: readonly Check[]; actions?: ((check: Check) => ReactNode) | undefined };

const KIND_WORDS = {
  tick: 'tick',
  reading: 'reading',
  choice: 'choice',
  connector: 'connector sheet',
} as const;

/** The checks of one sheet in order, each with what passes. */
export function CheckList({ checks, actions }: Props) {
  if (checks.length === 0)
    return <p className="empty">No check yet. Until there is one, nothing can be proved.</p>;
  return (
    <ol className="border-t border-edge">
      {checks.map((check) => (
        <li key={check.id} className="grid grid-cols-[2rem_1fr] gap-x-3 border-b border-rule py-3">
          <span className="number-text text-soft" aria-hidden="true">
            {check.position}
          </span>
          <div>
            <p>
              <strong>{check.label}</strong>
            </p>
            <p className="text-small text-soft">
              {KIND_WORDS[check.kind]}
              {limitsText(check) ? `, ${limitsText(check)}` : ''}
              {check.choices.length > 0 ? ` (of: ${check.choices.join(', ')})` : ''}
            </p>
            {check.help ? <p className="text-small">{check.help}</p> : null}
            {check.caution ? (
              <p className="text-small">Caution: {cautionOf(check.caution)?.title ?? check.caution}</p>
            ) : null}
            {check.lesson ? (
              <p className="text-small">
                <LessonLink claim={check.lesson} />
              </p>
            ) : null}
            {actions?.(check)}
          </div>
        </li>
      ))}
    </ol>
  );
}
