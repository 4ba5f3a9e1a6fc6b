import { db } from '@/lib/db/client';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { inspect } from '@/lib/warranty/inspect';
import { openClaim } from '@/lib/warranty/open-claim';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import type { Cause } from '@/lib/warranty/rules/causes';
import { INSPECTION_ITEMS, type InspectionAnswer, type InspectionKey } from '@/lib/warranty/rules/inspection';
import type { AlsoFound } from '@/lib/warranty/rules/ruling';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
import { Course } from './course';
import { addressOf, type CustomerKey } from './customers';
import { minutesLater } from './days';
import type { Shot } from './photos';
import type { Scene } from './scenes';
import type { Shop } from './shop';
import type { HandName } from './staff';
import { inTurn } from './turns';

type Look = readonly [answer: InspectionAnswer, note: string, scene: Scene];

/** What a sound unit shows at each item of the inspection. */
const SOUND: Record<InspectionKey, Look> = {
  'outside-damage': ['no', 'Light wear, no dents.', 'unit'],
  'liquid-signs-outside': ['no', '', 'unit'],
  'seal-and-screws': ['no', 'Our seal is whole.', 'label'],
  'connector-magnified': ['no', '', 'socket'],
  'self-test-as-received': ['yes', '', 'meter'],
  'liquid-signs-inside': ['no', '', 'board'],
  'previous-joints': ['no', '', 'board'],
  'jumper-wires': ['no', '', 'board'],
  'neighbouring-traces': ['no', '', 'board'],
  'self-test-opened': ['yes', '', 'meter'],
};

/** A claim and its job on their way, from the customer's form to the ruling and back. */
export class ClaimCourse extends Course {
  constructor(
    shop: Shop,
    key: string,
    jobId: string,
    customer: CustomerKey,
    openedAt: Date,
    readonly claimId: string,
    readonly number: string,
  ) {
    super(shop, key, jobId, customer, openedAt);
  }

  /** Answers the items of the inspection in their order, each with a photo; what is not told is as on a sound unit. */
  async inspect(
    told: Partial<Record<InspectionKey, Look>>,
    o: { upTo?: InspectionKey; by?: HandName } = {},
  ): Promise<void> {
    for (const { key: item } of INSPECTION_ITEMS) {
      const [answer, note, scene] = told[item] ?? SOUND[item];
      const [photo] = await this.photos(`inspection-${item}`, [[scene, note]]);
      await inspect({
        claimId: this.claimId,
        item,
        answer,
        note,
        photo: photo ?? null,
        actor: this.shop.hands[o.by ?? 'bench'],
        now: this.step(4),
      });
      if (item === o.upTo) return;
    }
  }

  async rule(o: {
    cause: Cause;
    alsoFound?: AlsoFound;
    reasonText: string;
    lesson?: string;
    isLetIn?: boolean;
    by?: HandName;
  }): Promise<void> {
    await ruleOnClaim({
      claimId: this.claimId,
      jobVersion: await this.version(),
      cause: o.cause,
      alsoFound: o.alsoFound ?? null,
      isEvidenceClear: true,
      mayTell: true,
      isLetIn: o.isLetIn ?? false,
      reasonText: o.reasonText,
      lesson: o.lesson ?? '',
      actor: this.shop.hands[o.by ?? 'bench'],
      now: this.step(9),
    });
  }

  async secondLook(isConfirmed = true): Promise<void> {
    await takeSecondLook({
      claimId: this.claimId,
      jobVersion: await this.version(),
      isConfirmed,
      actor: this.shop.hands.owner,
      now: this.step(9),
    });
  }

  async contest(text: string): Promise<void> {
    await contestRuling({ jobId: this.jobId, text, now: this.step() });
  }
}

/** Opens a claim on the certificate a job was sent back with, as its customer does from the certificate's page. */
export async function claimOn(
  job: Course,
  o: {
    symptom: string;
    details: string;
    serial?: string;
    battery?: string;
    shots?: Shot[];
    at: Date;
  },
): Promise<ClaimCourse> {
  await job.shop.turns.until(o.at);
  const certificate = await db.certificate.findUniqueOrThrow({
    where: { jobId: job.jobId },
    select: {
      number: true,
      revision: true,
      serialTyped: true,
      job: { select: { model: { select: { battery: true } } } },
    },
  });
  const key = `${job.key}/claim`;
  const opened = await openClaim({
    certificateNumber: certificate.number,
    revision: certificate.revision,
    serial: o.serial ?? certificate.serialTyped,
    symptom: o.symptom,
    details: o.details,
    batteryAnswer: certificate.job.model.battery === 'none' ? 'none' : (o.battery ?? 'healthy'),
    dataAnswer: 'saved',
    address: addressOf(job.customer),
    photos: await job.photos('claim', o.shots ?? []),
    now: o.at,
  });
  if (!opened.opened) throw new Error(`${key}: ${opened.assessment.answer}`);
  const claim = await db.claim.findUniqueOrThrow({
    where: { number: opened.claimNumber },
    select: { id: true, number: true, jobId: true },
  });
  return inTurn(
    new ClaimCourse(job.shop, key, claim.jobId, job.customer, minutesLater(o.at, 5), claim.id, claim.number),
  );
}
