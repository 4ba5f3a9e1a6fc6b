import type { Metadata } from 'next';
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
import { liftUnits, recallsOf } from '@/lib/bench/recall-records';
import { liftText } from '@/lib/bench/rules/recall-text';
import { formatInstant } from '@/lib/calendar/format';
import { lotToday } from '../../lot-today';
import { liftAction, liftQuietlyAction } from '../actions';
import { LetterPreview } from '../letter-preview';
import { unitColumns } from '../unit-columns';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await requireStaff('recall');
  const lot = await lotToday((await params).id);
  return { title: lot ? `Lift the recall of lot ${lot.code}, ${lot.part.name}` : 'Not found' };
}

/** A recall that was a mistake: who was written to is again, a look at the letter, and then the button; or without one. */
export default async function LiftPage({ params }: Props) {
  await requireStaff('recall');
  const { id } = await params;
  const [lot, all, workshop] = await Promise.all([lotToday(id), recallsOf(id), readWorkshop()]);
  if (!lot) nothingHere();
  const inForce = all.filter(({ lifted }) => lifted === null);
  const ids = inForce.map((recall) => recall.id);
  const recalls = ids.join(',');
  const units = await liftUnits(id, ids);
  const letters = units.filter((unit) => unit.what === 'letter').length;
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href="/workshop/parts">Parts</TextLink> /{' '}
            <TextLink href={`/workshop/parts/lots/${id}`}>{`Lot ${lot.code}`}</TextLink>
          </>
        }
        title="Lift the recall"
        lead={`${lot.part.name}, lot ${lot.code}: ${letters === 0 ? 'nobody' : letters === 1 ? 'one customer' : `${letters} customers`} would get a letter that the recall was a mistake.`}
        next={
          inForce.length === 0
            ? 'nothing: no recall of this lot is in force.'
            : 'lift it only where the lot is sound, or was never the one in doubt. A lot that is still in doubt stays recalled; a single piece that is out is noted on its job.'
        }
      />
      {inForce.length === 0 ? null : (
        <>
          <Notice kind="warn" heading="What lifting does">
            <p>
              Its pieces count as stock and may be fitted, units leave with them, and every warning on
              customers’ pages ends. What was written off stays written off.
            </p>
          </Notice>
          <section aria-labelledby="in-force" className="mt-8">
            <h2 id="in-force" className="mb-3">
              What is lifted
            </h2>
            <ul className="max-w-text">
              {inForce.map((recall) => (
                <li key={recall.id}>
                  <p>{formatInstant(recall.at, { locale: workshop.locale, zone: workshop.timeZone })}:</p>
                  <p className="written">{recall.text}</p>
                </li>
              ))}
            </ul>
          </section>
          <div className="mt-8">
            <Table
              caption="Units that carry it"
              rows={units}
              rowKey={(unit) => unit.jobId}
              empty="No unit carries a piece of this lot."
              columns={[
                ...unitColumns<(typeof units)[number]>(),
                { head: 'Letter', cell: (unit) => WORDS[unit.what] },
              ]}
            />
          </div>
          <section aria-labelledby="letter" className="mt-10">
            <h2 id="letter" className="mb-3">
              {letters > 0 ? 'The letter' : 'Nobody is written to'}
            </h2>
            {letters > 0 ? (
              <ActionForm
                action={liftAction.bind(null, id)}
                hidden={{ letters, recalls }}
                label="Letter that the recall was a mistake"
              >
                <TextArea
                  name="text"
                  label="What it says"
                  hint="The unit, the part and the lot are named above it. Say what was the mistake, and what holds now."
                  rows={10}
                  maxLength={4000}
                  defaultValue={liftText({ part: lot.part.name })}
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
                  intro={`We wrote to you about this part in your unit: ${lot.part.name}, lot ${lot.code}. What we asked of you then no longer holds:`}
                  question={`Lift the recall, and send this to ${letters === 1 ? 'one customer' : `${letters} customers`} now?`}
                  consequence="One e-mail for each unit on the list, and the lot is as any other again. Each job’s history says so."
                />
              </ActionForm>
            ) : (
              <ActionForm
                action={liftQuietlyAction.bind(null, id)}
                hidden={{ recalls }}
                label="Lift the recall"
              >
                <TextArea
                  name="text"
                  label="Why it was a mistake"
                  hint="Kept with the lot. No customer reads it."
                  rows={4}
                  maxLength={4000}
                />
                <ConfirmButton
                  label="Lift the recall"
                  question={`Lift the recall of lot ${lot.code} now?`}
                  confirm="Yes, lift it"
                  consequence="The lot is as any other again. Each job’s history says so. No mail."
                />
              </ActionForm>
            )}
          </section>
        </>
      )}
    </>
  );
}

const WORDS = {
  letter: 'gets it',
  untold: 'none: was not written to',
  'no-address': 'none: the address was erased',
} as const;
