import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { recalledPieces } from '@/lib/bench/stored-recalls';
import { recalledPartsOf } from '@/lib/jobs/facts';
import { type JobRecord, readStage } from '@/lib/jobs/records';
import { isRepaired } from '@/lib/jobs/rules/repaired';
import { LEFT_STAGES } from '@/lib/jobs/rules/stage-sets';
import { unitOfJob } from '@/lib/jobs/stored-recall';
import { showNumber } from '@/lib/numbers/job-number';
import { pieceOut } from './bench-actions';
import { carriedFields } from './carried-fields';

/** Pieces of recalled lots in the unit: what this job fitted, and what an earlier one did. */
export async function RecalledPart({ job }: { job: JobRecord }) {
  const own = recalledPartsOf(job);
  const earlier = (await recalledPieces(unitOfJob(job))).filter(({ jobNumber }) => jobNumber !== job.number);
  const goesAsItCame = job.stage === 'ready' && !isRepaired(job.events);
  const hasLeft = LEFT_STAGES.includes(readStage(job.stage));
  return (
    <>
      {own.length === 0 ? null : hasLeft ? (
        <LeftWith job={job} />
      ) : (
        <Notice kind="stop" heading="A part of a recalled lot is fitted">
          <p>
            {`${own.join('; ')}. The unit cannot leave with it: fit another, and put this one back, at the bench.`}
          </p>
        </Notice>
      )}
      {earlier.map(({ jobNumber, part, lot }) => (
        <Notice
          key={`${jobNumber} ${part} ${lot}`}
          kind="stop"
          heading="An earlier job fitted a part of a recalled lot"
        >
          <p>
            {`${part}, lot ${lot}, on job `}
            <TextLink href={`/workshop/jobs/${jobNumber}#parts`}>{showNumber(jobNumber)}</TextLink>. The unit
            cannot leave with it.{' '}
            {goesAsItCame
              ? 'This job goes back without a repair, so no part is fitted here: take the piece out, and note on that job that it is out. Another one is fitted on a claim.'
              : 'Fit another here, then note on that job that it is out.'}
          </p>
        </Notice>
      ))}
    </>
  );
}

function LeftWith({ job }: { job: JobRecord }) {
  const pieces = job.partUses.filter(({ lot, takenOutAt }) => lot.recalls.length > 0 && takenOutAt === null);
  return (
    <Notice kind="stop" heading="The unit left with a part of a recalled lot">
      <p>
        Whoever has it is warned on their page, and a unit with a cell of such a lot gets no packing slip.
        Once the piece is out, replaced on a later job or taken out by a competent person where the unit is,
        note it here.
      </p>
      {pieces.map((use) => (
        <ActionForm
          key={use.id}
          action={pieceOut.bind(null, job.number)}
          hidden={{ ...carriedFields(job.version), use: use.id }}
          label={`Out of the unit: ${use.lot.part.name}, lot ${use.lot.code}`}
        >
          <ConfirmButton
            label={`Out of the unit: ${use.lot.part.name}, lot ${use.lot.code}`}
            question="Is the piece out, and did you see it or have it in writing?"
            confirm="Yes, it is out"
            consequence="Ends the warning on the customer’s page, and the unit may be posted again. It cannot be taken back."
          />
        </ActionForm>
      ))}
    </Notice>
  );
}
