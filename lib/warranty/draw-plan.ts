import { createHash, randomBytes } from 'node:crypto';
import { limitsText } from '@/lib/bench/rules/checks';
import { entryText } from '@/lib/bench/rules/entry-text';
import { checksOf, provedSheets } from '@/lib/bench/rules/job-sheets';
import { readKeptProbes } from '@/lib/bench/rules/kept-probes';
import { probesLines } from '@/lib/bench/rules/probes';
import { wireVerdict, wireWords } from '@/lib/bench/rules/wire-verdict';
import { readCheck } from '@/lib/bench/stored-checks';
import { type Day, dayInZone, maxDay } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { config } from '@/lib/config';
import { drawCertificate } from '@/lib/documents/certificate';
import type { Proof } from '@/lib/documents/proof';
import { putFile } from '@/lib/files/store';
import { type JobRecord, stagesReached } from '@/lib/jobs/records';
import { CERTIFICATE_STAMPS } from '@/lib/jobs/rules/stage-sets';
import { STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { foldSerial } from '@/lib/numbers/serial';
import { countryName } from '@/lib/parcels/rules/country-abroad';
import type { WorkshopCard } from '@/lib/workshop/card';
import { letterheadOf } from '@/lib/workshop/rules/letterhead';
import { claimFormat } from './claim-format';
import { coverCalendar } from './cover-calendar';
import type { CertificatePlan } from './plan-certificate';
import { certificateText } from './rules/certificate-text';
import { countCover } from './rules/cover';
import { explainCount } from './rules/cover-sentences';
import type { SignedCertificate } from './rules/signature-payload';
import { readPrivateKey, signCertificate } from './signature';
import { currentSigningKey } from './signing-key';

export type DrawnCertificate = {
  keyId: string;
  token: string;
  fileKey: string;
  sha256: string;
  issuedOn: Day;
  endsOn: Day;
  ends: ReadonlyMap<string, Day>;
  /** last day to open a claim, by line id */
  claimDays: ReadonlyMap<string, Day>;
};

/** Signs a planned certificate, draws it and stores the file. The rows are written later, in the dispatch's transaction. */
export async function drawPlan(
  plan: CertificatePlan,
  job: JobRecord,
  o: {
    workshop: WorkshopCard;
    staff: ReadonlyMap<string, { initials: string }>;
    isCollected: boolean;
    now: Date;
  },
): Promise<DrawnCertificate> {
  const { workshop } = o;
  const issuedOn = dayInZone(o.now, workshop.timeZone);
  const calendar = await coverCalendar(plan, { workshop, today: issuedOn });
  const counts = plan.lines.map((line) => ({
    line,
    count: countCover(line, plan.held, plan.terms, calendar),
  }));
  const [first, ...rest] = counts.map(({ count }) => count);
  if (!first) throw new Error('a certificate needs a cover line');
  const endsOn = maxDay(first.end, ...rest.map((count) => count.end));
  const lastClaimDay = maxDay(first.lastClaimDay, ...rest.map((count) => count.lastClaimDay));

  const key = await currentSigningKey(o.now);
  const signed: SignedCertificate = {
    keyId: key.id,
    number: plan.number,
    revision: plan.revision,
    serial: foldSerial(job.serialTyped),
    issuedOn,
    lines: counts.map(({ line, count }) => ({
      kind: line.kind,
      term: line.term,
      startsOn: line.startsOn,
      endsOn: count.end,
    })),
  };
  const token = signCertificate(signed, readPrivateKey(key.privateKey));
  // Whoever reads a certificate may be abroad, so the country ends the address always.
  const head = letterheadOf(workshop, countryName(workshop.country, workshop.locale));
  const modelName = unitName(job.model);
  const text = certificateText({
    number: plan.number,
    revision: plan.revision,
    issuedOn,
    guarantor: {
      name: workshop.name,
      addressLines: head.address,
      email: workshop.email,
      phone: head.phone,
    },
    unit: { model: modelName, serial: job.serialTyped },
    lines: counts,
    terms: plan.terms,
    territory: workshop.territory,
    zoneLabel: `in the time zone ${workshop.timeZone}`,
    claimPage: `${config.appUrl.replace(/^https?:\/\//, '')}/certificate`,
    ...claimFormat(workshop),
  });
  const bytes = await drawCertificate({
    setting: { paper: workshop.paper, locale: workshop.locale, made: o.now },
    workshop: head,
    number: plan.number,
    revision: plan.revision,
    title: text.title,
    replaces: plan.replaces?.revision ?? null,
    issuedOn,
    job: job.number,
    unit: { model: modelName, serial: job.serialTyped },
    checkUrl: `${config.appUrl}/c/${token}`,
    checkPage: `${config.appUrl.replace(/^https?:\/\//, '')}/certificate`,
    coveredUntil: endsOn,
    lastClaimDay,
    cover: counts.map(({ line, count }) => ({
      what: `${line.kind === 'work' ? 'Work' : 'Part'}: ${line.description}`,
      term: line.term,
      from: line.startsOn,
      until: count.end,
    })),
    counted: [...new Set(counts.map(({ count }) => explainCount(count, workshop.locale)))],
    sections: text.sections,
    stamps: stamps(job, { timeZone: workshop.timeZone, today: issuedOn, isCollected: o.isCollected }),
    proof: proofOf(plan.provedBy, { staff: o.staff, timeZone: workshop.timeZone, today: issuedOn }),
    payload: { token, certificate: signed },
  });
  const fileKey = `certificates/${plan.number}-${plan.revision}-${randomBytes(8).toString('hex')}.pdf`;
  await putFile(fileKey, bytes, 'application/pdf');
  return {
    keyId: key.id,
    token,
    fileKey,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    issuedOn,
    endsOn,
    ends: new Map(counts.map(({ line, count }) => [line.id, count.end])),
    claimDays: new Map(counts.map(({ line, count }) => [line.id, count.lastClaimDay])),
  };
}

function stamps(job: JobRecord, o: { timeZone: string; today: Day; isCollected: boolean }) {
  const { timeZone, today, isCollected } = o;
  const reached = stagesReached(job.events).filter(({ stage }) => CERTIFICATE_STAMPS.includes(stage));
  return [
    ...reached.map(({ stage, at }) => ({
      label: STAGE_WORDS[stage].label,
      day: dayInZone(at, timeZone),
      state: 'done' as const,
    })),
    { label: isCollected ? 'Collected' : STAGE_WORDS['sent-back'].label, day: today, state: 'done' as const },
  ];
}

function proofOf(
  job: JobRecord,
  o: { staff: ReadonlyMap<string, { initials: string }>; timeZone: string; today: Day },
): Proof {
  const initials = (userId: string) => o.staff.get(userId)?.initials ?? '';
  const checks = new Map(checksOf(job).map((check) => [check.id, readCheck(check)]));
  const entries = job.checkEntries.flatMap((entry) => {
    const check = checks.get(entry.checkId);
    if (!check) return [];
    const base = {
      name: check.label,
      result: entry.isPassed ? ('pass' as const) : ('fail' as const),
      on: dayInZone(entry.at, o.timeZone),
      by: initials(entry.userId),
    };
    return [{ base, check, entry, probes: readKeptProbes(entry.probes) }];
  });
  const last = job.checkEntries.at(-1);
  return {
    work: job.work.map((entry) => entry.text),
    parts: job.partUses.map((use) => ({
      name: use.lot.part.name,
      quantity: use.quantity,
      lot: use.lot.code,
    })),
    wires: job.jumperWires.map((wire) => ({
      what: wireWords(wire),
      milliohms: wire.milliohms,
      expected: wireVerdict(wire).most,
    })),
    checkSheets: provedSheets(job).map(({ repair, version }) => ({ repair, version })),
    readings: entries
      .filter(({ probes }) => probes.length === 0)
      .map(({ base, check, entry }) => ({
        ...base,
        reading: entryText(entry, null),
        unit: entry.reading === null ? '' : (check.unit ?? ''),
        limits: limitsText(check),
      })),
    connectors: entries
      .filter(({ probes }) => probes.length > 0)
      .map(({ base, probes }) => ({ ...base, lines: probesLines(probes) })),
    technician: {
      initials: last ? initials(last.userId) : '',
      provedOn: last ? dayInZone(last.at, o.timeZone) : o.today,
    },
  };
}
