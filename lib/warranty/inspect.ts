import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { RULING_STAGES, UNRULED_STAGES } from '@/lib/jobs/rules/stage-sets';
import { writeEvent } from '@/lib/jobs/write-event';
import { type NewPhoto, writePhotos } from '@/lib/jobs/write-photos';
import { Refusal } from '@/lib/outcome';
import type { InspectionAnswer, InspectionKey } from './rules/inspection';

/** Answers one item of the inspection; answering it again replaces the answer and keeps both in the history. */
export async function inspect(
  o: ByStaff & {
    claimId: string;
    item: InspectionKey;
    answer: InspectionAnswer;
    note: string;
    photo: NewPhoto | null;
  },
): Promise<void> {
  await transaction(async (tx) => {
    const claim = await tx.claim.findUnique({
      where: { id: o.claimId },
      select: { number: true, jobId: true, state: true },
    });
    if (!claim) throw new Refusal('not-found', 'There is no claim with this number.');
    await writeEvent(tx, {
      jobId: claim.jobId,
      actor: o.actor,
      now: o.now,
      expected: { stages: claim.state === 'open' ? UNRULED_STAGES : RULING_STAGES },
      event: { kind: 'claim-inspected', data: { claim: claim.number, item: o.item, answer: o.answer } },
    });
    const [photoId] = await writePhotos(tx, {
      jobId: claim.jobId,
      purpose: 'inspection',
      photos: o.photo ? [o.photo] : [],
      actor: o.actor,
      now: o.now,
    });
    const entry = {
      answer: o.answer,
      note: o.note,
      at: o.now,
      userId: o.actor.id,
      ...(photoId === undefined ? {} : { photoId }),
    };
    await tx.inspectionEntry.upsert({
      where: { claimId_item: { claimId: o.claimId, item: o.item } },
      create: { claimId: o.claimId, item: o.item, ...entry },
      update: entry,
    });
  });
}
