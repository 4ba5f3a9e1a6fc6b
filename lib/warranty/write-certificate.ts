import { dayToDate } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import type { Tx } from '@/lib/db/transaction';
import type { JobRecord } from '@/lib/jobs/records';
import { foldSerial } from '@/lib/numbers/serial';
import { Refusal } from '@/lib/outcome';
import type { DrawnCertificate } from './draw-plan';
import type { CertificatePlan } from './plan-certificate';

/** The rows of a certificate that was drawn; the revision it replaces is superseded, once. */
export async function writeCertificate(
  tx: Tx,
  plan: CertificatePlan,
  drawn: DrawnCertificate,
  o: { job: JobRecord; now: Date },
): Promise<void> {
  if (plan.replaces) {
    const { count } = await tx.certificate.updateMany({
      where: { id: plan.replaces.id, supersededAt: null },
      data: { supersededAt: o.now },
    });
    if (count === 0)
      throw new Refusal('conflict', 'This certificate was reissued meanwhile. Nothing was sent back.');
  }
  await tx.certificate.create({
    data: {
      number: plan.number,
      revision: plan.revision,
      jobId: o.job.id,
      policyVersionId: plan.policyVersionId,
      modelName: unitName(o.job.model),
      serialTyped: o.job.serialTyped,
      serialKey: foldSerial(o.job.serialTyped),
      issuedAt: o.now,
      issuedOn: dayToDate(drawn.issuedOn),
      endsOn: dayToDate(drawn.endsOn),
      keyId: drawn.keyId,
      signature: drawn.token,
      fileKey: drawn.fileKey,
      sha256: drawn.sha256,
      lines: {
        create: plan.lines.map((line, position) => ({
          position,
          key: line.id,
          kind: line.kind,
          description: line.description,
          symptoms: line.symptoms,
          term: line.term,
          startsOn: dayToDate(line.startsOn),
          renewedUntil: line.renewedUntil ? dayToDate(line.renewedUntil) : null,
          renewedFrom: line.renewedFrom ? dayToDate(line.renewedFrom) : null,
          endsOn: dayToDate(drawn.ends.get(line.id) ?? drawn.endsOn),
          lastClaimDay: dayToDate(drawn.claimDays.get(line.id) ?? drawn.endsOn),
          lotId: plan.lots.get(line.id) ?? null,
        })),
      },
    },
  });
}
