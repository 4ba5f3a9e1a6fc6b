import { Table } from '@/app/ui/page/table';
import { NumberLink } from '@/app/workshop/number-link';
import { formatDay } from '@/lib/calendar/format';
import { WATCHED_DAYS } from '@/lib/returns/cover-sql';
import type { Learning } from '@/lib/returns/lessons';
import { beforeAndAfter, lessonSentence } from '@/lib/returns/rules/lesson';

/** From claims to causes, lessons and checks, and what came back before a check and since. */
export function LearningPart({ learning, locale }: { learning: Learning; locale: string }) {
  const { checks, claims, ruled } = learning;
  return (
    <section aria-labelledby="learning">
      <h2 id="learning">What was learnt</h2>
      {checks.length === 0 ? (
        <p className="max-w-[42rem]">
          No check on its sheet came from a claim yet. When a claim is ruled covered, its page asks what would
          have caught it and can put that on the sheet.
        </p>
      ) : (
        <ul className="grid max-w-[42rem] gap-4">
          {checks.map(({ label, lesson, version, since, isOff, before, after, stillWatched }) => (
            <li key={lesson}>
              <p>
                <strong>{label}</strong>
                {`, on the sheet ${isOff ? 'from' : 'since'} ${formatDay(since, locale, 'short')} (version ${version})${isOff ? ' and no longer' : ''}, from claim `}
                <NumberLink of="claims" number={lesson} />
              </p>
              <p>{lessonSentence(beforeAndAfter({ before, after }), locale)}</p>
              {stillWatched > 0 ? (
                <p className="text-small">
                  {`${stillWatched === 1 ? 'One unit was' : `${stillWatched} units were`} proved with it less than ${WATCHED_DAYS} days ago and not counted yet.`}
                </p>
              ) : null}
            </li>
          ))}
        </ul>
      )}
      {checks.length > 0 ? (
        <p className="mt-3 max-w-[42rem] text-small">
          {`Counted are units that came back within ${WATCHED_DAYS} days, by the version of the sheet they were proved on: before are versions older than the check, since then those that hold it. Units with shorter cover are never counted. A unit with two repairs counts on the sheets of both: for the one done beside, it came back where that one failed again or was taught the check. A change after a check need not come from it.`}
        </p>
      ) : null}
      <Table
        caption={
          ruled > claims.length
            ? `The latest ${claims.length} of ${ruled} claims ruled covered`
            : 'Claims ruled covered'
        }
        rows={claims}
        rowKey={({ number }) => number}
        empty="No claim on this repair was ruled covered."
        columns={[
          {
            head: 'Claim',
            kind: 'rowhead',
            cell: ({ number }) => <NumberLink of="claims" number={number} />,
          },
          { head: 'Opened', cell: ({ openedOn }) => formatDay(openedOn, locale, 'short') },
          { head: 'Cause', cell: ({ cause }) => cause },
          { head: 'Lesson', cell: ({ lesson }) => lesson || 'none written' },
          { head: 'Check added', cell: ({ check }) => checkWords(check) },
        ]}
      />
    </section>
  );
}

function checkWords(check: Learning['claims'][number]['check']): string {
  if (!check) return 'none';
  return check.isElsewhere ? `${check.label} (on the sheet of another repair)` : check.label;
}
