import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { FileField } from '@/app/ui/forms/file-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { Tag } from '@/app/ui/page/tag';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { formatInstant } from '@/lib/calendar/format';
import { readStage } from '@/lib/jobs/records';
import { RULING_STAGES, UNRULED_STAGES } from '@/lib/jobs/rules/stage-sets';
import { may } from '@/lib/people/rules/roles';
import type { ClaimRow } from '@/lib/warranty/claim-desk-case';
import {
  INSPECTION_ITEMS,
  type InspectionItem,
  type InspectionKey,
  type InspectionState,
  inspectionState,
} from '@/lib/warranty/rules/inspection';
import { readInspection } from '@/lib/warranty/stored-inspection';
import { readRuling } from '@/lib/warranty/stored-ruling';
import { answerItem } from './actions';
import { casePhoto } from './case-photos';
import type { CaseProps } from './open-case';

type Entry = ClaimRow['inspection'][number];
type Item = InspectionItem & { key: InspectionKey };

/** The checklist of a returned unit: what can only be seen before opening comes first, and says when opening may begin. */
export function InspectionPart(props: CaseProps) {
  const { claim, job } = props.found;
  const state = inspectionState(claim.inspection.map(readInspection));
  const stages = claim.state === 'open' ? UNRULED_STAGES : RULING_STAGES;
  const isOnBench = stages.includes(readStage(job.stage));
  // What was ruled is done next, and opening the unit is part of it.
  const isSettled = claim.state === 'ruled' && readRuling(claim)?.isFinal === true;
  const isOpen = isOnBench && may(props.who.role, 'rule-claim');
  // Only one is opened by itself, so that a phone shows it whole.
  const next = INSPECTION_ITEMS.find(({ key }) => isLeft(key, state))?.key ?? null;
  const list = (stage: Item['stage']) => (
    <ul className="grid gap-3">
      {INSPECTION_ITEMS.filter((item) => item.stage === stage).map((item) => (
        <ItemRow key={item.key} {...props} item={item} isOpen={isOpen} isNext={item.key === next} />
      ))}
    </ul>
  );
  return (
    <section id="inspection" aria-labelledby="inspection-head">
      <h2 id="inspection-head">Inspection</h2>
      <p>
        {job.stage === 'booked'
          ? 'The unit is not here yet. The inspection begins when it is taken in.'
          : progressWords(state)}
      </p>
      <h3>Before opening</h3>
      {list('before-opening')}
      {isOnBench && !isSettled ? <OpeningNotice state={state} /> : null}
      <h3>After opening</h3>
      {list('after-opening')}
    </section>
  );
}

function isLeft(key: InspectionKey, state: InspectionState): boolean {
  return state.unanswered.includes(key) || state.withoutPhoto.includes(key);
}

function progressWords(state: InspectionState): string {
  const answered = INSPECTION_ITEMS.length - state.unanswered.length;
  const without = state.withoutPhoto.length;
  const photos = without === 0 ? '' : without === 1 ? ', 1 without a photo' : `, ${without} without a photo`;
  const unclear =
    state.unclear.length === 0
      ? ''
      : ` Unclear: ${state.unclear.length}. Where it is unclear, it is covered.`;
  return `${answered} of ${INSPECTION_ITEMS.length} answered${photos}.${unclear}`;
}

function OpeningNotice({ state }: { state: InspectionState }) {
  if (state.mayOpen) {
    return (
      <Notice kind="good" heading="The unit may be opened">
        <p>Everything that can only be seen before opening is answered, with photos.</p>
      </Notice>
    );
  }
  const left = INSPECTION_ITEMS.filter((item) => item.stage === 'before-opening' && isLeft(item.key, state));
  return (
    <Notice kind="warn" heading="Do not open the unit yet">
      <p>
        {left.length === 1
          ? 'One item still lacks its answer or photo. '
          : `${left.length} items still lack their answer or photo. `}
        Once the unit is open, they can never be looked at again.
      </p>
    </Notice>
  );
}

const ANSWER_TONES = { yes: 'now', no: 'good', unclear: 'warn' } as const;

function ItemRow(props: CaseProps & { item: Item; isOpen: boolean; isNext: boolean }) {
  const { item, found, isOpen, isNext } = props;
  const entry = found.claim.inspection.find((each) => each.item === item.key);
  const answer = entry ? readInspection(entry).answer : null;
  return (
    <li id={`item-${item.key}`} className="border-b border-rule">
      <details open={isNext && isOpen}>
        <summary>
          {item.label}{' '}
          <span className="ms-2 inline-flex flex-wrap gap-x-3">
            {answer ? (
              <Tag tone={ANSWER_TONES[answer]}>{answer}</Tag>
            ) : (
              <Tag tone="waiting">not answered</Tag>
            )}
            {entry && entry.photoId === null ? <Tag tone="warn">no photo</Tag> : null}
          </span>
        </summary>
        <div className="grid gap-4 pb-4">
          {item.caution ? (
            <Notice kind="warn">
              <p>{item.caution}</p>
            </Notice>
          ) : null}
          {entry ? <EntryText entry={entry} {...props} /> : null}
          {isOpen ? <ItemForm item={item} entry={entry} found={found} /> : null}
          {entry || isOpen ? null : <p className="text-soft">Not answered.</p>}
        </div>
      </details>
    </li>
  );
}

function EntryText({ entry, found, workshop, names }: CaseProps & { entry: Entry }) {
  const photo = found.job.photos.find((each) => each.id === entry.photoId);
  const when = formatInstant(entry.at, { locale: workshop.locale, zone: workshop.timeZone });
  return (
    <div className="grid gap-2">
      {entry.note ? <p className="written">{entry.note}</p> : null}
      <p className="text-small text-soft">{`${names.get(entry.userId)?.name ?? 'Somebody who left'}, ${when}`}</p>
      {photo ? (
        <PhotoStrip label="Photo of this item" photos={[casePhoto(photo, workshop, 'thumb')]} />
      ) : null}
    </div>
  );
}

function ItemForm({
  item,
  entry,
  found,
}: {
  item: Item;
  entry: Entry | undefined;
  found: CaseProps['found'];
}) {
  return (
    <ActionForm
      action={answerItem.bind(null, found.claim.number)}
      hidden={{ version: found.job.version, item: item.key }}
      label={item.label}
    >
      <RadioGroup
        name="answer"
        label={`${item.label}?`}
        defaultValue={entry ? readInspection(entry).answer : undefined}
        choices={[
          { value: 'yes', label: 'Yes' },
          { value: 'no', label: 'No' },
          { value: 'unclear', label: 'Unclear' },
        ]}
      />
      <TextField name="note" label="Note" optional maxLength={1000} defaultValue={entry?.note} />
      <FileField
        name="photo"
        label={entry?.photoId ? 'Another photo, in place of this one' : 'Photo'}
        hint="Also when there is nothing to see: it shows that somebody looked."
        optional
        most={1}
        camera
      />
      <SubmitButton
        kind="second"
        label={entry ? 'Answer again' : 'Keep the answer'}
        busy="Keeping…"
        consequence="The history keeps every answer. The customer sees the photos, each with its answer, once the ruling is told."
      />
    </ActionForm>
  );
}
