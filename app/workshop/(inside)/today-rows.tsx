import type { ReactNode } from 'react';
import { Slip, SlipList } from '@/app/ui/docket/slip';
import { LinkButton } from '@/app/ui/page/button';
import { EmptyState } from '@/app/ui/page/empty-state';
import { Tag } from '@/app/ui/page/tag';
import { compareDays, type Day, daysBetween } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import { awaitedWords, partsWait } from '@/lib/jobs/rules/awaited-parts';
import { STAGE_WORDS } from '@/lib/jobs/rules/stages';
import type { TodayRow } from '@/lib/jobs/rules/today';
import type { TodayListed } from '@/lib/jobs/today';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { may, type Role } from '@/lib/people/rules/roles';
import type { WorkshopCard } from '@/lib/workshop/card';
import { AnswerTag } from './answer-tag';
import { claimAtDesk, stepOf } from './today-steps';

type Listed = TodayRow<TodayListed>;
type Format = { workshop: WorkshopCard; today: Day; role: Role };

/** One list of today's page under its heading, with the bench time in it; nothing at all when it is empty and `empty` is null. */
export function TodaySection(props: {
  id: string;
  title: string;
  rows: readonly Listed[];
  empty: string | null;
  format: Format;
}) {
  const { id, title, rows, empty, format } = props;
  if (rows.length === 0 && empty === null) return null;
  const minutes = rows.reduce((sum, row) => sum + row.minutesLeft, 0);
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>
        {title}
        {minutes > 0 ? (
          <span className="font-normal text-soft">
            {' '}
            <span className="whitespace-nowrap">{`· ${inHours(minutes)} of bench work`}</span>
          </span>
        ) : null}
      </h2>
      {rows.length === 0 ? (
        <EmptyState>{empty}</EmptyState>
      ) : (
        <SlipList label={title}>
          {rows.map((row) => (
            <Row key={row.job.number} row={row} format={format} />
          ))}
        </SlipList>
      )}
    </section>
  );
}

function Row({ row, format }: { row: Listed; format: Format }) {
  const { job } = row;
  const step = stepOf(row, format.role);
  const claim = claimAtDesk(row);
  return (
    <Slip
      href={claim ? `/workshop/claims/${claim}` : `/workshop/jobs/${job.number}`}
      kind={claim ? 'Claim' : job.kind === 'claim' ? 'Claim job' : 'Job'}
      number={showNumber(claim ?? job.number)}
      title={`${job.unit}: ${job.repair}`}
      tag={
        step ? (
          <LinkButton href={step.href} kind="second">
            {step.label}
          </LinkButton>
        ) : null
      }
      facts={factsOf(row, format)}
    />
  );
}

function factsOf(row: Listed, { workshop, today, role }: Format): ReactNode[] {
  const { job, wait } = row;
  const short = (on: Day) => formatDay(on, workshop.locale, 'short');
  const facts: ReactNode[] = [
    row.answer && <AnswerTag key="answer" due={row.answer} locale={workshop.locale} />,
    urgency(row, today, workshop.remindDays),
    claimTag(row, may(role, 'second-look')),
    partTag(row, today),
    job.customer,
  ];
  facts.push(STAGE_WORDS[job.stage].label.toLowerCase());
  if (wait.who === 'customer' && wait.step === 'pay') {
    facts.push(`${formatMoney(job.owed, workshop.currency, workshop.locale)} to pay`);
    if (job.readyOn) facts.push(`ready since ${short(job.readyOn)}`);
    return present(facts);
  }
  if (job.offerUntil) facts.push(`price valid until ${short(job.offerUntil)}`);
  if (job.cameBackOn) {
    facts.push(`came back ${short(job.cameBackOn)}`);
    if (wait.who === 'customer') facts.push('asked where it should go');
    return present(facts);
  }
  if (job.sentBackOn)
    return present([...facts, `on ${short(job.sentBackOn)}; its customer has written since`]);
  facts.push(job.promisedOn ? `promised ${short(job.promisedOn)}` : `here since ${short(job.arrivedOn)}`);
  if (job.awaitedParts.length > 0)
    facts.push(
      `waits for ${job.awaitedParts.map((part) => awaitedWords(part, { today, locale: workshop.locale })).join('; ')}`,
    );
  if (row.minutesLeft > 0) facts.push(`${row.minutesLeft} min of ${job.minutesPlanned} left`);
  if (job.claim && job.certificateEndsOn) facts.push(...coverFact(job.certificateEndsOn, today, short));
  return present(facts);
}

function present(facts: readonly ReactNode[]): ReactNode[] {
  return facts.filter((fact) => fact !== null);
}

function urgency({ job, wait, promiseLate }: Listed, today: Day, remindDays: number): ReactNode {
  if (wait.who === 'us' && wait.step === 'decide-unclaimed') {
    return (
      <Tag key="urgency" tone="warn">
        the owner decides
      </Tag>
    );
  }
  if (wait.who === 'customer' && wait.step === 'answer-price' && job.offerUntil) {
    const left = daysBetween(today, job.offerUntil);
    return left > remindDays ? null : (
      <Tag key="urgency" tone="warn">
        {left === 0 ? 'lapses today' : left === 1 ? 'lapses tomorrow' : `lapses in ${left} days`}
      </Tag>
    );
  }
  if (wait.who === 'us' && wait.step === 'offer-ran-out') {
    return (
      <Tag key="urgency" tone="warn">
        price not answered in time
      </Tag>
    );
  }
  if (promiseLate > 0) {
    return (
      <Tag key="urgency" tone="stop">
        {`${workingDaysWords(promiseLate)} late`}
      </Tag>
    );
  }
  const isDueToday = job.promisedOn !== null && compareDays(job.promisedOn, today) === 0;
  return isDueToday && wait.who === 'us' && job.stage !== 'ready' ? (
    <Tag key="urgency" tone="warn">
      promised today
    </Tag>
  ) : null;
}

function claimTag({ job, wait }: Listed, mayLookAgain: boolean): ReactNode {
  if (wait.who !== 'us') return null;
  if (wait.step === 'second-look') {
    return (
      <Tag key="claim" tone={mayLookAgain ? 'now' : 'waiting'}>
        {mayLookAgain ? 'ruled: look a second time' : 'ruled: waits for the owner'}
      </Tag>
    );
  }
  if (wait.step === 'rule-claim' && job.claim?.standing === 'contested') {
    return (
      <Tag key="claim" tone="warn">
        contested by the customer
      </Tag>
    );
  }
  return job.isLateClaim ? (
    <Tag key="claim" tone="note">
      opened after cover had ended
    </Tag>
  ) : null;
}

function partTag({ job, wait }: Listed, today: Day): ReactNode {
  if (wait.who === 'us' && wait.step === 'part-is-here')
    return (
      <Tag key="part" tone="now">
        {hereWords(job.awaitedParts.filter(({ isNeeded }) => isNeeded).length)}
      </Tag>
    );
  return (partsWait(job.awaitedParts, today)?.daysOver ?? 0) > 0 ? (
    <Tag key="part" tone="warn">
      part not come in time
    </Tag>
  ) : null;
}

function hereWords(needed: number): string {
  if (needed === 0) return 'no part is needed any more';
  return needed === 1 ? 'the part is here' : 'the parts are here';
}

/** Days before the end of cover from which a claim on it is named. */
const SOON_DAYS = 14;

function coverFact(endsOn: Day, today: Day, short: (on: Day) => string): string[] {
  const left = daysBetween(today, endsOn);
  if (left > SOON_DAYS) return [];
  return [left < 0 ? `cover ended ${short(endsOn)}` : `cover ends ${short(endsOn)}`];
}

/** 330 minutes as '5.5 h', 45 as '45 min'. */
export function inHours(minutes: number): string {
  return minutes < 60 ? `${minutes} min` : `${Math.round(minutes / 6) / 10} h`;
}
