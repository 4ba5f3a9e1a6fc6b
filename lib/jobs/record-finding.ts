import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from './actor';
import { WITH_US } from './rules/stage-sets';
import { writeEvent } from './write-event';
import { idOfSent, writeOnce } from './write-once';
import { type NewPhoto, writePhotos } from './write-photos';

/** Adds a finding with its photos. An addition clashes with nobody, so it names no version. */
export async function recordFinding(
  o: ByStaff & { jobId: string; text: string; photos: readonly NewPhoto[]; formKey?: string | undefined },
): Promise<void> {
  await writeOnce('finding_pkey', () =>
    transaction(async (tx) => {
      const finding = await tx.finding.create({
        data: {
          ...idOfSent(o.formKey, [o.jobId, o.text, o.photos.map(({ sha256 }) => sha256)]),
          jobId: o.jobId,
          text: o.text,
          at: o.now,
          userId: o.actor.id,
        },
        select: { id: true },
      });
      await writePhotos(tx, { ...o, purpose: 'finding', findingId: finding.id });
      await writeEvent(tx, {
        jobId: o.jobId,
        actor: o.actor,
        now: o.now,
        expected: { stages: WITH_US },
        event: { kind: 'finding-recorded', data: { findingId: finding.id } },
      });
    }),
  );
}
