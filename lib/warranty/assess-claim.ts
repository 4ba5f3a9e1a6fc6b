import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { type Tx, transaction } from '@/lib/db/transaction';
import { compareSerials, type SerialComparison } from '@/lib/numbers/serial';
import { readWorkshop } from '@/lib/workshop/records';
import { coverCalendar } from './cover-calendar';
import { isGenuine } from './genuine';
import { type CertificateRecord, type Chain, readChain, readCoverLine } from './records';
import { type AssessedRevision, assess } from './rules/assess';
import { behindSerial } from './rules/behind-serial';
import type { Assessment } from './rules/reasons';

type Question = {
  certificateNumber: string;
  /** as printed on the paper the customer holds; the one in force when null */
  revision: number | null;
  serial: string;
  symptom: string;
  now: Date;
};
type Answered = {
  assessment: Assessment;
  chain: Chain | null;
  /** a claim opened on this answer comes in the days of grace, and a person decides whether to let it in */
  isLate: boolean;
};

/** The preliminary answer, for a customer who asks before opening a claim. */
export function askAboutClaim(question: Question): Promise<Answered> {
  return transaction((tx) => assessClaim(tx, question));
}

/** Reads what the records know of a certificate and asks the rules for the preliminary answer to a claim. */
export async function assessClaim(tx: Tx, o: Question): Promise<Answered> {
  const workshop = await readWorkshop(tx);
  const today = dayInZone(o.now, workshop.timeZone);
  const chain = await readChain(o.certificateNumber, tx);
  const lines = (chain?.revisions ?? []).flatMap((revision) => revision.lines.map(readCoverLine));
  const { held, terms } = chain ?? { held: [], terms: NO_TERMS };
  const calendar = await coverCalendar({ lines, held, terms }, { workshop, today }, tx);
  const asked = chain?.revisions.find((revision) => revision.revision === o.revision) ?? chain?.inForce;
  if (!chain || !asked) {
    const assessment = assess({
      certificate: null,
      signatureValid: false,
      serial: 'different',
      today,
      symptom: o.symptom,
      openClaim: null,
      terms: NO_TERMS,
      calendar,
      held: [],
    });
    return { assessment, chain: null, isLate: false };
  }
  const isReplaced = asked.id !== chain.inForce.id;
  const signatureValid = await isGenuine(chain.inForce, tx);
  const answerFor = (serial: SerialComparison) =>
    assess({
      certificate: {
        ...assessedRevision(asked),
        number: asked.number,
        serial: asked.serialTyped,
        replacedBy: isReplaced ? assessedRevision(chain.inForce) : null,
      },
      signatureValid,
      serial,
      today,
      symptom: o.symptom,
      openClaim: chain.openClaim && { number: chain.openClaim.number, openedOn: chain.openClaim.openedOn },
      terms: chain.terms,
      calendar,
      held: chain.held,
    });
  const assessment = answerFor(compareSerials(chain.inForce.serialTyped, o.serial));
  if (assessment.answer === 'confirm-serial')
    return { ...behindSerial(assessment, answerFor('same')), chain };
  return { assessment, chain, isLate: assessment.answer === 'lapsed' };
}

function assessedRevision(record: CertificateRecord): AssessedRevision {
  return {
    revision: record.revision,
    issuedOn: dayFromDate(record.issuedOn),
    lines: record.lines.map(readCoverLine),
  };
}

// The answer for an unknown number rests on nothing but its being unknown; the rules still take whole facts.
const NO_TERMS: Chain['terms'] = {
  startEvent: 'handed-to-carrier',
  workTerm: null,
  partsTerm: null,
  exclusions: [],
  renewedMinimum: null,
  heldRule: 'none',
  rollLastDay: false,
  graceDays: 0,
  transferable: true,
};
