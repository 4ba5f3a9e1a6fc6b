import { transaction } from '@/lib/db/transaction';
import { foldSerial } from '@/lib/numbers/serial';
import { Refusal } from '@/lib/outcome';
import { RULINGS } from '@/lib/warranty/rules/causes';
import { isOtherUnit } from '@/lib/warranty/rules/other-unit';
import { isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import type { Actor } from './actor';
import { RULING_STAGES } from './rules/stage-sets';
import { writeEvent } from './write-event';

const RULED_COVERED =
  'This serial is another one than the certificate’s, and the claim is ruled covered for the unit of the certificate. Read it once more.';

const NO_PHOTO = 'Add a photo of the serial on the unit first, under Photos, as “The serial”.';

/**
 * A person settles which serial the unit carries, after looking at it. The booking keeps what the customer typed in
 * the history; the job goes on under the serial that was read. Needs a photo of that serial, as the proof.
 * A claim that is ruled covered stays with the unit of its certificate.
 */
export async function settleSerial(o: {
  jobId: string;
  version: number;
  serial: string;
  note: string;
  actor: Actor;
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    const photos = await tx.photo.count({ where: { jobId: o.jobId, purpose: 'serial' } });
    if (photos === 0) throw new Refusal('invalid', NO_PHOTO, 'serial');
    const job = await tx.job.findUnique({ where: { id: o.jobId }, select: { serialTyped: true } });
    const claim = await tx.claim.findUnique({
      where: { jobId: o.jobId },
      select: { ruling: true, certificate: { select: { serialTyped: true } } },
    });
    const ruling = RULINGS.find((known) => known === claim?.ruling) ?? null;
    if (claim && isCoveredAtLeastPartly(ruling) && isOtherUnit(claim.certificate.serialTyped, o.serial))
      throw new Refusal('invalid', RULED_COVERED, 'serial');
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: RULING_STAGES },
      set: { serialTyped: o.serial, serialKey: foldSerial(o.serial), isSerialSettled: true },
      event: {
        kind: 'serial-settled',
        data: { serial: o.serial, note: o.note, ...(job && { before: job.serialTyped }) },
      },
    });
  });
}
