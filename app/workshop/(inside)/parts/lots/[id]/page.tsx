import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Facts } from '@/app/ui/docket/facts';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { DayText } from '@/app/ui/words/day-text';
import { Money } from '@/app/ui/words/money';
import { NumberText } from '@/app/ui/words/number-text';
import { NumberLink } from '@/app/workshop/number-link';
import type { LotUnit } from '@/lib/bench/part-records';
import { recallsOf } from '@/lib/bench/recall-records';
import { dayInZone } from '@/lib/calendar/day';
import { formatInstant } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { staffNames } from '@/lib/jobs/records';
import { LEFT_STAGES } from '@/lib/jobs/rules/stage-sets';
import { isStage, STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { may } from '@/lib/people/rules/roles';
import { coverClock } from '@/lib/returns/cover-clock';
import { flaggedLots } from '@/lib/returns/flagged-lots';
import { evidenceSentence } from '@/lib/returns/rules/evidence-words';
import { requireStaff } from '../../../../who';
import { SavedNote } from '../../../catalogue/saved-note';
import { LotForms } from './lot-forms';
import { LotHistory } from './lot-history';
import { lotToday } from './lot-today';

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ saved?: string }> };

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff();
  const lot = await lotToday((await params).id);
  return { title: lot ? `Lot ${lot.code}, ${lot.part.name}` : 'Not found' };
}

export default async function LotPage({ params, searchParams }: Props) {
  const staff = await requireStaff();
  const { id } = await params;
  const { saved } = await searchParams;
  const workshop = await readWorkshop();
  const at = now();
  const seesReturns = may(staff.role, 'returns');
  const [lot, recalls, names, flagged] = await Promise.all([
    lotToday(id),
    recallsOf(id),
    staffNames(),
    seesReturns ? flaggedLots(coverClock(workshop, at), at) : [],
  ]);
  if (!lot) nothingHere();
  const suspicion = flagged.find((each) => each.id === id);
  const { currency, locale } = workshop;
  const carrying = lot.units.filter((unit) => unit.takenOutAt === null);
  const isRecalled = recalls.some(({ lifted }) => lifted === null);
  const hasLeft = carrying.some((unit) => isStage(unit.stage) && LEFT_STAGES.includes(unit.stage));
  const covered = carrying.filter((unit) => unit.hasLiveCover).length;
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href="/workshop/parts">Parts</TextLink> /{' '}
            <TextLink href={`/workshop/parts/${lot.part.id}`}>{lot.part.name}</TextLink>
          </>
        }
        title={
          <>
            Lot <NumberText text={lot.code} />
          </>
        }
        lead={unitsText(carrying.length, covered)}
      >
        {may(staff.role, 'recall') && (hasLeft || (carrying.length > 0 && !isRecalled)) ? (
          <LinkButton href={`/workshop/parts/lots/${id}/recall`} kind="second">
            {hasLeft ? 'Write to everybody who carries it' : 'Stop this lot'}
          </LinkButton>
        ) : null}
        {may(staff.role, 'recall') && isRecalled ? (
          <LinkButton href={`/workshop/parts/lots/${id}/recall/lift`} kind="second">
            It was a mistake: lift the recall
          </LinkButton>
        ) : null}
      </PageHead>
      <SavedNote saved={saved} />
      {suspicion ? <p className="mb-4 max-w-text">{evidenceSentence(suspicion.comparison, locale)}</p> : null}
      {seesReturns && lot.units.length > 0 ? (
        <p className="mb-4">
          <TextLink href={`/workshop/returns/by/lot/${id}`}>What came back of it</TextLink>
        </p>
      ) : null}
      {recalls.map((recall) => (
        <details key={recall.id} className="mb-4 max-w-text">
          <summary>
            {`${lettersText(recall.mails)}, ${formatInstant(recall.at, { locale, zone: workshop.timeZone })}${recall.lifted ? '; lifted' : ''}`}
          </summary>
          <p className="written mt-2">{recall.text}</p>
          {recall.lifted ? (
            <>
              <p className="mt-3">
                {`Lifted as a mistake, ${formatInstant(recall.lifted.at, { locale, zone: workshop.timeZone })}${recall.lifted.mails > 0 ? `; ${lettersText(recall.lifted.mails).toLowerCase()}` : ''}:`}
              </p>
              <p className="written mt-2">{recall.lifted.text}</p>
            </>
          ) : null}
        </details>
      ))}
      <Facts
        items={[
          { term: 'Supplier', text: lot.supplier },
          { term: 'Received on', text: <DayText day={lot.receivedOn} locale={locale} style="short" /> },
          { term: 'Received', text: pieces(lot.received) },
          {
            term: 'In stock',
            text: isRecalled ? `${pieces(lot.inStock)}, recalled: not to be fitted` : pieces(lot.inStock),
          },
          {
            term: 'Cost of one',
            text: <Money minor={lot.unitCostMinor} currency={currency} locale={locale} />,
          },
        ]}
      />
      <div className="mt-10">
        <Table
          caption="Units it was fitted in"
          rows={lot.units}
          rowKey={(unit) => `${unit.jobNumber} ${unit.usedAt.toISOString()}`}
          empty="No piece of this lot was fitted yet."
          columns={unitColumns(workshop)}
        />
      </div>
      <LotHistory lot={lot} workshop={workshop} names={names} />
      {may(staff.role, 'bench') ? <LotForms lot={lot} workshop={workshop} /> : null}
    </>
  );
}

function unitColumns({ locale, timeZone }: { locale: string; timeZone: string }) {
  return [
    {
      head: 'Job',
      kind: 'rowhead' as const,
      cell: (unit: LotUnit) => <NumberLink of="jobs" number={unit.jobNumber} />,
    },
    { head: 'Unit', cell: (unit: LotUnit) => unit.model },
    { head: 'Serial', cell: (unit: LotUnit) => <NumberText text={unit.serial} /> },
    { head: 'Pieces', kind: 'number' as const, cell: (unit: LotUnit) => unit.quantity },
    {
      head: 'Piece',
      cell: ({ takenOutAt }: LotUnit) =>
        takenOutAt ? (
          <>
            out since <DayText day={dayInZone(takenOutAt, timeZone)} locale={locale} style="short" />
          </>
        ) : (
          'in the unit'
        ),
    },
    {
      head: 'Stage',
      cell: (unit: LotUnit) => (isStage(unit.stage) ? STAGE_WORDS[unit.stage].label : unit.stage),
    },
    { head: 'Cover on the part', cell: (unit: LotUnit) => <Cover unit={unit} locale={locale} /> },
  ];
}

function Cover({ unit, locale }: { unit: LotUnit; locale: string }) {
  if (unit.coveredUntil === null) return 'no certificate';
  const until = <DayText day={unit.coveredUntil} locale={locale} style="short" />;
  if (unit.hasLiveCover) return <Tag tone="now">until {until}</Tag>;
  return <>ended {until}</>;
}

function unitsText(units: number, covered: number): string {
  if (units === 0) return 'No unit carries it.';
  const carried = units === 1 ? 'One unit carries it' : `${units} units carry it`;
  return `${carried}; ${covered === 0 ? 'none is' : covered === 1 ? 'one is' : `${covered} are`} under cover.`;
}

function lettersText(mails: number): string {
  if (mails === 0) return 'Stopped, nobody was written to';
  return `Letter to ${mails === 1 ? 'one customer' : `${mails} customers`}`;
}

function pieces(count: number): string {
  return count === 1 ? '1 piece' : `${count} pieces`;
}
