import type { Metadata } from 'next';
import { newFormKey } from '@/app/form-key';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { requireStaff } from '@/app/workshop/who';
import { type RecallUnit, recallsOf, recallUnits } from '@/lib/bench/recall-records';
import { isCell, recallText } from '@/lib/bench/rules/recall-text';
import { formatDay } from '@/lib/calendar/format';
import { lotToday } from '../lot-today';
import { recallAction, stopLotAction } from './actions';
import { LetterPreview } from './letter-preview';
import { unitColumns } from './unit-columns';

const NEXT =
  'look at the letter and the list; sending is asked once more. From then on no further piece is fitted or counted as stock, and a unit that is here leaves only without it. Take what is left out of stock on the lot’s page.';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await requireStaff('recall');
  const lot = await lotToday((await params).id);
  return { title: lot ? `Letter about lot ${lot.code}, ${lot.part.name}` : 'Not found' };
}

/** A letter to everybody whose unit carries a piece of the lot: its words, who gets it, a look, and then the button; or a stop without one. */
export default async function RecallPage({ params }: Props) {
  await requireStaff('recall');
  const { id } = await params;
  const workshop = await readWorkshop();
  const [lot, units, recalls] = await Promise.all([lotToday(id), recallUnits(id), recallsOf(id)]);
  if (!lot) nothingHere();
  const letters = units.filter((unit) => unit.what === 'letter').length;
  const here = units.filter((unit) => unit.what === 'here').length;
  const isRecalled = recalls.some(({ lifted }) => lifted === null);
  const mayStop = letters === 0 && here > 0 && !isRecalled;
  const coverOf = new Map(lot.units.map((unit) => [unit.jobNumber, unit] as const));
  const cover = (unit: RecallUnit) => {
    const known = coverOf.get(unit.jobNumber);
    if (!known?.coveredUntil) return 'no certificate';
    const until = formatDay(known.coveredUntil, workshop.locale, 'short');
    return known.hasLiveCover ? `until ${until}` : `ended ${until}`;
  };
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href="/workshop/parts">Parts</TextLink> /{' '}
            <TextLink href={`/workshop/parts/lots/${id}`}>{`Lot ${lot.code}`}</TextLink>
          </>
        }
        title={letters > 0 ? 'Write to everybody who carries it' : 'Stop this lot'}
        lead={`${lot.part.name}, lot ${lot.code}: ${letters === 0 ? 'nobody' : letters === 1 ? 'one customer' : `${letters} customers`} would get a letter, ${here === 0 ? 'no unit' : here === 1 ? 'one unit' : `${here} units`} with a piece of it ${here > 1 ? 'are' : 'is'} here.`}
        next={
          letters > 0
            ? NEXT
            : mayStop
              ? 'say why. From then on no further piece is fitted or counted as stock, and a unit that is here leaves only without it.'
              : isRecalled
                ? 'nothing: this lot is stopped already.'
                : undefined
        }
      />
      <Notice kind="warn" heading={letters > 0 ? 'Before you send' : 'Before you stop it'}>
        <p>
          {isCell(lot.part.name)
            ? 'A cell in doubt must not be posted. Arrange with the carrier or the local collection point first how it is handed in. '
            : ''}
          A serious risk may have to be told to the authority and to the supplier as well: local product
          safety law comes first.
        </p>
      </Notice>
      <div className="mt-8">
        <Table
          caption={letters > 0 ? 'Who gets it' : 'Units that carry it'}
          rows={units}
          rowKey={(unit) => unit.jobId}
          empty="No unit carries a piece of this lot."
          columns={[
            ...unitColumns<RecallUnit>(),
            { head: 'Cover on the part', cell: cover },
            { head: 'Letter', cell: (unit) => WORDS[unit.what] },
          ]}
        />
      </div>
      {letters > 0 ? (
        <section aria-labelledby="letter" className="mt-10">
          <h2 id="letter" className="mb-3">
            The letter
          </h2>
          <ActionForm
            action={recallAction.bind(null, id)}
            hidden={{ letters, formKey: newFormKey() }}
            label="Letter about a lot"
          >
            <TextArea
              name="text"
              label="What it says"
              hint="The unit, the part and the lot are named above it."
              rows={12}
              maxLength={4000}
              defaultValue={recallText({ part: lot.part.name })}
            />
            <SubmitButton
              kind="second"
              name="step"
              value="look"
              label="Look at the letter"
              consequence="Nothing is sent yet."
            />
            <LetterPreview
              letters={letters}
              question={`Send this to ${letters === 1 ? 'one customer' : `${letters} customers`} now?`}
              consequence="One e-mail for each unit on the list, and no more of this lot leaves the house. A letter that left cannot be taken back, only followed by another. Each job’s history says so."
              intro={`When we repaired your unit we fitted this part: ${lot.part.name}, lot ${lot.code}. What we ask of you now:`}
            />
          </ActionForm>
        </section>
      ) : null}
      {mayStop ? (
        <section aria-labelledby="stop" className="mt-10">
          <h2 id="stop" className="mb-3">
            Nobody is written to
          </h2>
          <ActionForm
            action={stopLotAction.bind(null, id)}
            hidden={{ formKey: newFormKey() }}
            label="Stop this lot"
          >
            <TextArea
              name="text"
              label="Why it is stopped"
              hint="Kept with the lot. No customer reads it."
              rows={4}
              maxLength={4000}
            />
            <ConfirmButton
              label="Stop this lot"
              question={`Stop lot ${lot.code} now?`}
              confirm="Yes, stop it"
              consequence="No more of this lot is fitted, and no unit leaves with a piece of it, until the stop is lifted on the lot’s page. Each job’s history says so. No mail."
            />
          </ActionForm>
        </section>
      ) : null}
    </>
  );
}

const WORDS = {
  letter: 'gets it',
  here: 'none: the unit is with us',
  'no-address': 'none: the address was erased',
} as const;
