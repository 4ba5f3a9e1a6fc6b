import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { Checkbox } from '@/app/ui/forms/choices';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { DayText } from '@/app/ui/words/day-text';
import { StageTag } from '@/app/ui/words/stage-tag';
import { NumberLink } from '@/app/workshop/number-link';
import { now } from '@/lib/clock';
import { type ListedPromise, listPromisesToMove } from '@/lib/jobs/list-promises-to-move';
import { showNumber } from '@/lib/numbers/job-number';
import type { PromiseToMove, WhyMove } from '@/lib/promise/rules/promises-to-move';
import { requireStaff } from '../../../who';
import { moveSeveral } from './actions';
import { fieldsOf } from './moves-schema';

export const metadata: Metadata = { title: 'Promises to move' };

export default async function MovePromisesPage() {
  await requireStaff('take-in');
  const workshop = await readWorkshop();
  const { today, toMove } = await listPromisesToMove(workshop, now());
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/promise">Promises</TextLink>}
        title="Promises to move"
        lead="Days that are past, on which nobody is here, or by which the bench has no time left. Customers mind a later day less when they hear of it early."
      />
      {/* The form stays when nothing is left on the list: it says what was moved. */}
      <ActionForm action={moveSeveral} label="Promises to move">
        <Rows rows={toMove} locale={workshop.locale} today={today} />
      </ActionForm>
    </>
  );
}

type Row = PromiseToMove<ListedPromise>;

function Rows({ rows, locale, today }: { rows: readonly Row[]; locale: string; today: string }) {
  if (rows.length === 0) return <p className="empty">Every promise can be kept as it stands.</p>;
  return (
    <>
      <p className="max-w-[42rem]">
        The new day is the first one with bench time for the unit, after all that was promised before it and
        after the part it waits for, where a day is known. Change it where you know better. Units whose
        customer is asked are not here, since the answer moves their day by itself.
      </p>
      <Table
        caption="Promises that cannot be kept as they stand"
        captionHidden
        rows={rows}
        rowKey={({ promise }) => promise.number}
        columns={[
          { head: 'Job', kind: 'rowhead', cell: ({ promise }) => <Job promise={promise} /> },
          {
            head: 'Promised for',
            cell: ({ promise, why }) => (
              <>
                <DayText day={promise.promisedOn} locale={locale} style="short" />{' '}
                <Tag tone="warn">{WHY[why]}</Tag>
              </>
            ),
          },
          { head: 'New day', cell: (row) => <NewDay row={row} today={today} /> },
        ]}
      />
      <TextArea
        name="reason"
        label="Why"
        hint="In words all of these customers can follow; it stands in each mail as you write it."
        rows={2}
        maxLength={500}
      />
      <SubmitButton
        label="Move what is ticked"
        consequence="Tells each of these customers the new day and why, by mail and on the private page."
      />
    </>
  );
}

const WHY: Record<WhyMove, string> = {
  late: 'late',
  closed: 'nobody here then',
  'part-later': 'its part comes later',
  'no-room': 'no bench time left',
};

function Job({ promise }: { promise: ListedPromise }) {
  return (
    <>
      <NumberLink of="jobs" number={promise.number} part="promise" /> {`${promise.unit}, ${promise.customer}`}{' '}
      <StageTag stage={promise.stage} />
    </>
  );
}

/** A day that is past or closed is broken for certain, and ticked; what the bench has no time for is an estimate. */
function NewDay({ row: { promise, why, to }, today }: { row: Row; today: string }) {
  const fields = fieldsOf(promise.number);
  const about = showNumber(promise.number);
  return (
    <>
      <input type="hidden" name={fields.version} value={promise.version} />
      <TextField
        name={fields.to}
        label={<span className="sr-only">{`New day for ${about}`}</span>}
        type="date"
        width="short"
        min={today}
        defaultValue={to}
      />
      <Checkbox
        name={fields.tick}
        label={
          <>
            Move it<span className="sr-only">{` (${about})`}</span>
          </>
        }
        defaultChecked={why !== 'no-room'}
      />
    </>
  );
}
