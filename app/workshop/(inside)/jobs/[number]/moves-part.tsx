import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { NumberLink } from '@/app/workshop/number-link';
import type { Staff } from '@/app/workshop/who';
import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import { factsOf } from '@/lib/jobs/facts';
import { isPlainMove } from '@/lib/jobs/move';
import type { JobRecord } from '@/lib/jobs/records';
import { couldBeginEarly, openMoves, reasonSentence } from '@/lib/jobs/rules/guards';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { bookingOf } from '@/lib/jobs/rules/of-booking';
import { BEFORE_READY } from '@/lib/jobs/rules/stage-sets';
import { FINAL_STAGES, type Move, type MoveKey } from '@/lib/jobs/rules/stages';
import { recalledInUnit } from '@/lib/jobs/stored-recall';
import { actorKind, may, type Role } from '@/lib/people/rules/roles';
import { move } from './actions';
import { AfterDispatchPart } from './after-dispatch-part';
import { carriedFields } from './carried-fields';
import { DispatchForm } from './dispatch-form';
import { OfBookingPart } from './of-booking-part';
import type { SheetProps } from './open-sheet';
import { PromisePart } from './promise-part';
import { StopPart } from './stop-part';
import { ToldLatePart } from './told-late-part';
import { ToldPart } from './told-part';
import { UnclaimedPart } from './unclaimed-part';
import { UndoPart } from './undo-part';
import { AwaitedList, WaitPart } from './wait-part';

/** The one move back: after everything that leads on. */
const BACKWARDS = 'reopen-work';

/** Has a form of its own behind what goes on: most jobs wait for nothing. */
const WAIT = 'wait-for-parts';

const ASKS = 'ask-approval';

/** Comes by itself, and waits for nobody’s hand. */
const CLOSE = 'close';

/** Its reason is what the mail says. */
const TAKEN_BACK = 'take-back-price';

/** Moves of which nobody is told why they are shut: their forms say it, a ruling makes them, or it goes without saying. */
const UNSAID: ReadonlySet<MoveKey> = new Set([
  'dispatch',
  'arrive',
  'came-back',
  'undo-dispatch',
  'repair-after-all',
  'look-again',
  'fail-check',
  // The customer's own, of which only what was told is written down here.
  'approve',
  'decline',
  'decline-the-rest',
  'approve-after-no',
  'approve-late',
  'approve-late-waiting',
  'decline-late',
  'decline-the-rest-late',
  'decline-the-rest-late-waiting',
  'withdraw',
  'contest',
]);

/** Of a job that was booked itself it goes without saying. */
const OF_BOOKING = 'is-of-booking';

/** Moves that cost something or cannot be taken back are asked once more. */
const ASKED_ONCE = new Set(['cancel', 'set-aside', 'return-unrepaired', TAKEN_BACK, BACKWARDS]);

/** Every move that leaves this stage: those open as buttons with their consequence, the others with the reason why not. */
export async function MovesPart({
  job,
  workshop,
  staff,
  who,
  isOnSheet = false,
}: SheetProps & { who: Staff; isOnSheet?: boolean }) {
  const facts = {
    ...factsOf(job, dayInZone(now(), workshop.timeZone)),
    recalledParts: await recalledInUnit(job),
  };
  const moves = openMoves(facts, actorKind(who.role));
  const shut = moves.filter(
    ({ move: { key }, answer }) =>
      !answer.allowed && !UNSAID.has(key) && (key !== OF_BOOKING || facts.isWalkIn),
  );
  // A changed price is the exception, and named after what most jobs go on with.
  shut.sort((a, b) => Number(a.move.key === ASKS) - Number(b.move.key === ASKS));
  const open = moves.filter(({ answer }) => answer.allowed).map((each) => each.move);
  const onward = open.filter(({ key }) => key !== BACKWARDS && key !== WAIT && isPlainMove(key));
  const ahead = onward.filter(({ key }) => may(who.role, permissionOf(key)));
  const isStuck = onward.length === 0 && BEFORE_READY.includes(facts.stage);
  const back = open.find(({ key }) => key === BACKWARDS);
  const isOver = FINAL_STAGES.includes(facts.stage) && !facts.isSought;
  const booking = bookingOf(job.events);
  // Where nothing leads on yet, what is lacking is the next step, and stands open.
  const shutList =
    shut.length > 0 ? (
      <ul className="plain-list">
        {shut.map(({ move: { key, label }, answer }) => (
          <li key={key}>
            {`${label}: ${answer.allowed ? '' : answer.reasons.map((reason) => reasonSentence(reason, facts, workshop.locale)).join(' ')}`}
          </li>
        ))}
      </ul>
    ) : null;
  return (
    <div id="moves" className="moves">
      {booking ? (
        <p>
          {'Its parcel was taken in under its booking, job '}
          <NumberLink of="jobs" number={booking} />
          {'. Nothing is left to do on this one.'}
        </p>
      ) : null}
      {isOver && !booking ? <p>Nothing is left to do on this job.</p> : null}
      {couldBeginEarly(facts) ? (
        <Notice kind="warn" heading="No work yet">
          <p>{reasonSentence('start-allowed', facts, workshop.locale)}</p>
        </Notice>
      ) : null}
      {job.stage === 'booked' ? (
        <p>
          <LinkButton href={`/workshop/arrivals/${job.number}`}>Take in the parcel</LinkButton>
        </p>
      ) : null}
      {job.stage === 'ready' && may(who.role, 'dispatch') ? (
        <DispatchForm job={job} workshop={workshop} staff={staff} />
      ) : null}
      <AwaitedList job={job} workshop={workshop} />
      {job.stage === 'proving' && isStuck && !isOnSheet ? (
        <p>
          <LinkButton href={`/workshop/jobs/${job.number}/sheet`}>
            {may(who.role, 'bench') ? 'Enter the readings' : 'See the readings'}
          </LinkButton>
        </p>
      ) : null}
      {ahead.map((each, index) => (
        <PlainMove
          key={each.key}
          job={job}
          move={each}
          role={who.role}
          isMain={index === 0 && each.key !== CLOSE}
        />
      ))}
      {isStuck ? shutList : null}
      {may(who.role, permissionOf('approve')) ? (
        <>
          <ToldLatePart job={job} workshop={workshop} />
          <ToldPart job={job} workshop={workshop} />
        </>
      ) : null}
      <WaitPart job={job} workshop={workshop} role={who.role} isOpen={open.some(({ key }) => key === WAIT)} />
      {open.some(({ key }) => key === 'stop-repair') &&
      !open.some(({ key }) => key === 'return-unrepaired') &&
      may(who.role, permissionOf('stop-repair')) ? (
        <StopPart job={job} workshop={workshop} />
      ) : null}
      {back ? <PlainMove job={job} move={back} role={who.role} /> : null}
      {facts.isWithCarrier && !job.customer.erasedAt && may(who.role, permissionOf('came-back')) ? (
        <AfterDispatchPart job={job} workshop={workshop} />
      ) : null}
      {open.some(({ key }) => key === OF_BOOKING) && may(who.role, permissionOf(OF_BOOKING)) ? (
        <OfBookingPart job={job} locale={workshop.locale} />
      ) : null}
      <UndoPart job={job} moves={moves} role={who.role} at={{ now: now(), timeZone: workshop.timeZone }} />
      <UnclaimedPart job={job} workshop={workshop} staff={staff} role={who.role} />
      <PromisePart job={job} workshop={workshop} staff={staff} />
      {!isStuck && shutList ? (
        <details>
          <summary>Moves that are not open yet</summary>
          {shutList}
        </details>
      ) : null}
    </div>
  );
}

type PlainMoveProps = { job: JobRecord; move: Move; role: Role; isMain?: boolean };

/** The button of a move that has no form of its own; nothing for one that has, or for somebody who may not. */
function PlainMove({ job, move: { key, label, consequence }, role, isMain = false }: PlainMoveProps) {
  if (!isPlainMove(key) || !may(role, permissionOf(key))) return null;
  const isTold = key === TAKEN_BACK || (key === BACKWARDS && job.stage === 'ready');
  const why = isTold ? 'Why, in words for the customer' : 'Why';
  return (
    <ActionForm
      action={move.bind(null, job.number)}
      hidden={{ ...carriedFields(job.version), move: key }}
      label={label}
    >
      {ASKED_ONCE.has(key) ? (
        <ConfirmButton
          label={label}
          question={`${label}?`}
          confirm={`Yes: ${label.toLowerCase()}`}
          consequence={consequence}
        >
          <TextArea name="note" label={why} optional={key !== TAKEN_BACK} rows={2} maxLength={500} />
        </ConfirmButton>
      ) : (
        <SubmitButton label={label} consequence={consequence} kind={isMain ? 'main' : 'second'} />
      )}
    </ActionForm>
  );
}
