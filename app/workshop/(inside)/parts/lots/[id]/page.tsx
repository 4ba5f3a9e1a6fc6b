import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { MoneyField } from '@/app/ui/forms/money-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { DayText } from '@/app/ui/words/day-text';
import { Money } from '@/app/ui/words/money';
import { NumberText } from '@/app/ui/words/number-text';
import { type LotUnit, readLot } from '@/lib/bench/part-records';
import { recallsOf } from '@/lib/bench/recall-records';
import { dayInZone } from '@/lib/calendar/day';
import { formatInstant } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { staffNames } from '@/lib/jobs/records';
import { LEFT_STAGES } from '@/lib/jobs/rules/stage-sets';
import { isStage, STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { decimalText } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { may } from '@/lib/people/rules/roles';
import { coverClock } from '@/lib/returns/cover-clock';
import { flaggedLots } from '@/lib/returns/flagged-lots';
import { evidenceSentence } from '@/lib/returns/rules/evidence-words';
import { requireStaff } from '../../../../who';
import { SavedNote } from '../../../catalogue/saved-note';
import { addToLotAction, correctLotAction, writeOffAction } from '../../actions';
import { LotHistory } from './lot-history';

export const metadata: Metadata = { title: 'Lot' };

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ saved?: string }> };

export default async function LotPage({ params, searchParams }: Props) {
  const staff = await requireStaff();
  const { id } = await params;
  const { saved } = await searchParams;
  const workshop = await readWorkshop();
  const at = now();
  const seesReturns = may(staff.role, 'returns');
  const [lot, recalls, names, flagged] = await Promise.all([
    readLot(id, dayInZone(at, workshop.timeZone)),
    recallsOf(id),
    staffNames(),
    seesReturns ? flaggedLots(coverClock(workshop, at), at) : [],
  ]);
  if (!lot) nothingHere();
  const suspicion = flagged.find((each) => each.id === id);
  const { currency, locale } = workshop;
  const hasLeft = lot.units.some((unit) => isStage(unit.stage) && LEFT_STAGES.includes(unit.stage));
  const covered = lot.units.filter((unit) => unit.hasLiveCover).length;
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
        lead={unitsText(lot.units.length, covered)}
      >
        {staff.role === 'owner' && (hasLeft || (lot.units.length > 0 && recalls.length === 0)) ? (
          <LinkButton href={`/workshop/parts/lots/${id}/recall`} kind="second">
            {hasLeft ? 'Write to everybody who carries it' : 'Stop this lot'}
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
            {`${lettersText(recall.mails)}, ${formatInstant(recall.at, { locale, zone: workshop.timeZone })}`}
          </summary>
          <p className="written mt-2">{recall.text}</p>
        </details>
      ))}
      <Facts
        items={[
          { term: 'Supplier', text: lot.supplier },
          { term: 'Received on', text: <DayText day={lot.receivedOn} locale={locale} style="long" /> },
          { term: 'Received', text: pieces(lot.received) },
          {
            term: 'In stock',
            text:
              recalls.length > 0 ? `${pieces(lot.inStock)}, recalled: not to be fitted` : pieces(lot.inStock),
          },
          {
            term: 'Cost of one',
            text: <Money minor={lot.unitCostMinor} currency={currency} locale={locale} />,
          },
        ]}
      />
      <div className="mt-10">
        <Table
          caption="Units that carry it"
          rows={lot.units}
          rowKey={(unit) => `${unit.jobNumber} ${unit.usedAt.toISOString()}`}
          empty="No unit carries a piece of this lot yet."
          columns={unitColumns(locale)}
        />
      </div>
      <LotHistory lot={lot} workshop={workshop} names={names} />
      {may(staff.role, 'bench') ? (
        <section aria-labelledby="right" className="mt-12">
          <h2 id="right" className="mb-3">
            Put it right
          </h2>
          <ActionForm
            action={correctLotAction.bind(null, id)}
            hidden={{ mark: lot.mark }}
            label="Put the lot right"
            summary="Correct its code, supplier, day or cost"
          >
            <TextField
              name="code"
              label="Lot"
              hint="As on the bag or the delivery note."
              mono
              width="half"
              autoComplete="off"
              defaultValue={lot.code}
            />
            <TextField name="supplier" label="Supplier" width="half" defaultValue={lot.supplier} />
            <TextField
              name="receivedOn"
              label="Received on"
              type="date"
              width="half"
              defaultValue={lot.receivedOn}
            />
            <MoneyField
              name="unitCost"
              label="Cost of one piece, without tax"
              currency={currency}
              defaultValue={decimalText(lot.unitCostMinor, currency)}
            />
            <SubmitButton
              label="Correct the lot"
              consequence="What it said before stays in its history. Certificates that were issued keep the lot’s code as it was, and pieces that were fitted their cost."
            />
          </ActionForm>
        </section>
      ) : null}
      {may(staff.role, 'bench') ? (
        <section aria-labelledby="more" className="mt-12">
          <h2 id="more" className="mb-3">
            More of this lot
          </h2>
          <ActionForm
            action={addToLotAction.bind(null, id)}
            hidden={{ received: lot.received }}
            label="Add pieces to the lot"
            summary="Add pieces that came later, or were not counted"
          >
            <TextField name="quantity" label="Pieces" inputMode="numeric" width="short" />
            <MoneyField
              name="unitCost"
              label="Cost of one piece, without tax"
              currency={currency}
              defaultValue={decimalText(lot.unitCostMinor, currency)}
            />
            <SubmitButton
              label="Add them"
              consequence="They count as in stock. What one costs becomes the mean of those in stock and these."
            />
          </ActionForm>
        </section>
      ) : null}
      {may(staff.role, 'bench') && lot.inStock > 0 ? (
        <section aria-labelledby="off" className="mt-12">
          <h2 id="off" className="mb-3">
            Lost, broken or not to be trusted
          </h2>
          <ActionForm
            action={writeOffAction.bind(null, id)}
            hidden={{ inStock: lot.inStock }}
            label="Take pieces out of stock"
          >
            <ConfirmButton
              label="Take pieces out of stock"
              question="How many pieces will not be fitted?"
              confirm="Yes, take them out"
              consequence="They can no longer be chosen at the bench. Units that carry the lot stay listed here."
            >
              <TextField
                name="quantity"
                label="Pieces"
                inputMode="numeric"
                width="short"
                defaultValue={lot.inStock}
              />
              <TextField
                name="reason"
                label="Why"
                hint="Kept with the lot, with your name."
                maxLength={300}
              />
            </ConfirmButton>
          </ActionForm>
        </section>
      ) : null}
    </>
  );
}

function unitColumns(locale: string) {
  return [
    {
      key: 'job',
      head: 'Job',
      kind: 'rowhead' as const,
      cell: (unit: LotUnit) => (
        <TextLink href={`/workshop/jobs/${unit.jobNumber}`}>
          <NumberText text={showNumber(unit.jobNumber)} />
        </TextLink>
      ),
    },
    { key: 'model', head: 'Unit', cell: (unit: LotUnit) => unit.model },
    { key: 'serial', head: 'Serial', cell: (unit: LotUnit) => <NumberText text={unit.serial} /> },
    { key: 'pieces', head: 'Pieces', kind: 'number' as const, cell: (unit: LotUnit) => unit.quantity },
    {
      key: 'stage',
      head: 'Stage',
      cell: (unit: LotUnit) => (isStage(unit.stage) ? STAGE_WORDS[unit.stage].label : unit.stage),
    },
    {
      key: 'cover',
      head: 'Cover on the part',
      cell: (unit: LotUnit) => <Cover unit={unit} locale={locale} />,
    },
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
