import { type Tx, transaction } from '@/lib/db/transaction';
import { deleteFile } from '@/lib/files/store';
import { Refusal } from '@/lib/outcome';
import type { OnJob } from './actor';
import { type JobRecord, readJob, readStage } from './records';
import { hasLeft } from './rules/handover';
import { reopenedAt } from './rules/reopened';
import { isRepaired } from './rules/repaired';
import { firstSettled } from './rules/settled-serial';
import { type EntryKind, mayTakeBack, TAKE_BACK_REASONS, type TakeBackFacts } from './rules/take-back';
import { writeEvent } from './write-event';

/**
 * Takes back a finding, work, a wire or a photo that was recorded by mistake: it counts no more and leaves the customer's page and the
 * papers to come; who took it back and why stays in the history. To correct one, take it back and record it again. A photo goes for
 * good, and with a finding its photos do, since they may show what is another customer's.
 *
 * Files go last and before the commit, as lib/keeping/write-removal.ts does it: a row that is still there names them.
 */
export async function takeBackEntry(
  o: OnJob & { what: EntryKind; id: string; reason: string },
): Promise<void> {
  await transaction(async (tx) => {
    const job = await readJob({ id: o.jobId }, tx);
    const facts = job && takeBackFacts(job, o, { id: o.actor.id, isOwner: o.actor.kind === 'owner' });
    if (!job || !facts) throw new Refusal('not-found', 'This is not recorded on the job, or not any more.');
    const answer = mayTakeBack(facts);
    if (!answer.allowed)
      throw new Refusal(
        answer.reason === 'not-yours' ? 'not-allowed' : 'conflict',
        TAKE_BACK_REASONS[answer.reason],
      );
    const photos = photosWith(job, o);
    const minutes = o.what === 'work' ? job.work.find(({ id }) => id === o.id)?.minutes : undefined;
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version },
      event: {
        kind: 'entry-taken-back',
        data: {
          what: o.what,
          id: o.id,
          reason: o.reason,
          ...(minutes !== undefined && { minutes }),
          ...(photos.length > 0 && { sha256: photos.map(({ sha256 }) => sha256) }),
        },
      },
    });
    await mark(tx, o);
    await tx.photo.deleteMany({ where: { id: { in: photos.map(({ id }) => id) } } });
    for (const { fileKey, thumbKey } of photos) {
      await deleteFile(fileKey);
      await deleteFile(thumbKey);
    }
  });
}

type Entry = { what: EntryKind; id: string };

/** What decides whether an entry of a job may be taken back; null for one that is not there. */
export function takeBackFacts(job: JobRecord, entry: Entry, who: TakeBackFacts['who']): TakeBackFacts | null {
  const entries = entriesOf(job, entry.what);
  const found = entries.find(({ id }) => id === entry.id);
  if (!found) return null;
  const evidence = new Set(job.claim?.inspection.map(({ photoId }) => photoId));
  const proofs = proofsOfSerial(job);
  return {
    what: entry.what,
    recordedBy: found.userId,
    who,
    stage: readStage(job.stage),
    hasLeft: hasLeft(job.events),
    isRepaired: isRepaired(job.events),
    wasAsked: job.events.some(({ toStage }) => toStage === 'awaiting-approval'),
    isOnly: isOnly(job, entry, entries),
    isEvidence: photosWith(job, entry).some(({ id }) => evidence.has(id)),
    isProofOfSerial:
      firstSettled(job.events) !== undefined && proofs.length === 1 && proofs[0]?.id === entry.id,
  };
}

/** Photos of the serial; where it was settled before these had a purpose of their own, those of the arrival. */
function proofsOfSerial({ photos }: JobRecord): JobRecord['photos'] {
  const ofSerial = photos.filter(({ purpose }) => purpose === 'serial');
  return ofSerial.length > 0 ? ofSerial : photos.filter(({ purpose }) => purpose === 'arrival');
}

/** Whether nothing else of its kind counts: of work what was done since the job was opened again, as for the moves. */
function isOnly(job: JobRecord, { what, id }: Entry, entries: readonly { id: string }[]): boolean {
  const since = reopenedAt(job.events);
  const counted = what === 'work' ? job.work.filter(({ at }) => since === null || at >= since) : entries;
  return counted.length === 1 && counted[0]?.id === id;
}

function entriesOf(job: JobRecord, what: EntryKind): readonly { id: string; userId: string | null }[] {
  return { finding: job.findings, work: job.work, wire: job.jumperWires, photo: job.photos }[what];
}

/** The photos that go with an entry. */
function photosWith(job: JobRecord, { what, id }: Entry): JobRecord['photos'] {
  if (what === 'photo') return job.photos.filter((photo) => photo.id === id);
  return what === 'finding' ? job.photos.filter(({ findingId }) => findingId === id) : [];
}

async function mark(tx: Tx, { what, id, now }: Entry & { now: Date }): Promise<void> {
  const change = { where: { id }, data: { takenBackAt: now }, select: { id: true } };
  if (what === 'finding') await tx.finding.update(change);
  if (what === 'work') await tx.workEntry.update(change);
  if (what === 'wire') await tx.jumperWire.update(change);
}
