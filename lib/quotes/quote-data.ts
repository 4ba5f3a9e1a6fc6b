import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import type { Price } from '@/lib/documents/money-sheet';
import type { QuoteData } from '@/lib/documents/quote';
import { jobAddress, quoteAddress } from '@/lib/jobs/private-link';
import { type JobRecord, readStage, stagesReached } from '@/lib/jobs/records';
import { datedStamps } from '@/lib/jobs/rules/run-of-stamps';
import { BY_TELLING } from '@/lib/jobs/rules/told';
import { formatMoney } from '@/lib/money/amount';
import { readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { letterheadOf } from '@/lib/workshop/rules/letterhead';
import type { QuoteRecord } from './records';
import { agreedOf, offerOf } from './rules/agreed';
import { askedWords, isAskedFor } from './rules/asked-words';
import { isInspectionOnly } from './rules/inspection-fee';
import { revisionTotals, shownLines, taxOnPaper } from './rules/lines';
import { requestRun } from './rules/request-run';
import { requestMove } from './rules/request-states';
import { readLine } from './stored-lines';
import { readOfferWords } from './stored-offer-words';

type SentRevision = QuoteRecord['revisions'][number];
/** of a quote or of a job, whose terms of cover are its own */
type Revision = Omit<SentRevision, 'policyVersion'>;

/**
 * The price that a request for one led to: a certain revision, else the one that waits for an answer, the agreed one or
 * the last. A changed price of the job that was booked later proposes nothing, and is its job's paper.
 */
export function shownRevision(quote: QuoteRecord, revision?: number): SentRevision | null {
  const asked = quote.revisions.filter(isAskedFor);
  const inState = (state: string) => asked.find((each) => each.state === state);
  const shown =
    revision === undefined
      ? (inState('sent') ?? inState('accepted') ?? asked.at(-1))
      : asked.find((each) => each.revision === revision);
  return shown ?? null;
}

/**
 * Everything the paper of a quote that was asked for says; null while no price has been sent. `token` is that of the
 * private link it was opened by; staff never see one, so their copy has none.
 */
export async function askedQuoteData(
  quote: QuoteRecord,
  { token, revision }: { token?: string; revision?: number } = {},
): Promise<QuoteData | null> {
  const shown = shownRevision(quote, revision);
  if (!shown) return null;
  const workshop = await readWorkshop();
  const { request } = quote;
  const money = formatMoney(shown.grossMinor, quote.currency, workshop.locale);
  const words = askedWords(isInspectionOnly(shown), money);
  const earlier = quote.revisions.findLast((each) => each.revision < shown.revision);
  return {
    ...revisionData(shown, { workshop, currency: quote.currency }),
    number: quote.number,
    job: quote.job?.number ?? null,
    customer: request.name,
    unit: { model: request.device, serial: request.serialTyped || 'not told' },
    answerUrl: token ? quoteAddress(token) : null,
    stamps: requestRun(request.state, quote.events).map(({ label, state, at }) => ({
      label,
      state,
      day: at ? dayInZone(at, workshop.timeZone) : null,
    })),
    found: paragraphs(shown.reason),
    before: earlier ? { revision: earlier.revision, gross: earlier.grossMinor } : null,
    ifYes: [
      shown.onYes || words.onYes,
      'You post the unit to us and pay the postage. We write to you when it has arrived.',
      words.isFor === 'inspection'
        ? `We inspect it and offer you a price for the repair. The inspection costs ${money}; you say yes or no to the rest then.`
        : `We repair it, prove it and send it back. You pay ${money} before it goes back.`,
    ],
    ifNo: [requestMove('decline').consequence],
  };
}

/**
 * Everything the paper of a job's newest price says: the one that waits for an answer, else the agreed one. `token` as
 * above.
 */
export async function jobQuoteData(
  job: JobRecord,
  { token }: { token?: string } = {},
): Promise<QuoteData | null> {
  const quote = job.quotes[0];
  const revisions = quote?.revisions ?? [];
  const agreed = agreedOf(job);
  const shown = offerOf(job) ?? agreed ?? revisions.at(-1);
  if (!quote || !shown) return null;
  const workshop = await readWorkshop();
  // A price that was declined was never the agreed one, so nothing is compared with it.
  const earlier = revisions.findLast(
    ({ revision, state, decidedAt }) =>
      revision < shown.revision && (state === 'accepted' || (state === 'replaced' && decidedAt !== null)),
  );
  // The paper stands as on the day of its issue, so that the same price gives the same paper.
  const today = dayInZone(shown.issuedAt, workshop.timeZone);
  const words = shown.state === 'sent' ? readOfferWords(job, shown, { workshop, today }) : null;
  return {
    ...revisionData(shown, { workshop, currency: quote.currency }),
    number: quote.number,
    job: job.number,
    customer: job.customer.name,
    unit: { model: unitName(job.model), serial: job.serialTyped },
    answerUrl: token ? jobAddress(token) : null,
    stamps: datedStamps(readStage(job.stage), stagesReached(job.events), workshop.timeZone),
    found: [...paragraphs(shown.reason), ...job.findings.map(({ text }) => text)],
    before: earlier ? { revision: earlier.revision, gross: earlier.grossMinor } : null,
    ifYes: words ? [shown.onYes || words.onYes, ...repairThen(shown)] : [],
    ifNo: words ? [shown.onNo || words.onNo] : [],
  };
}

/** Which repair the job is under after a yes, where that is another one than it was booked as. */
function repairThen({ repair }: { repair: { name: string } | null }): string[] {
  return repair === null
    ? []
    : [`The repair is then “${repair.name}”: its checks are made, and the certificate is for it.`];
}

type Held = { workshop: WorkshopCard; currency: string };

function revisionData(revision: Revision, { workshop, currency }: Held) {
  const { locale, timeZone } = workshop;
  return {
    setting: { paper: workshop.paper, locale, made: revision.decidedAt ?? revision.issuedAt },
    workshop: letterheadOf(workshop),
    revision: revision.revision,
    issuedOn: dayInZone(revision.issuedAt, timeZone),
    validUntil: dayFromDate(revision.validUntil),
    proposed: proposed(revision),
    price: priceOf(revision, { workshop, currency }),
    outcome: outcomeOf(revision, workshop),
  };
}

function priceOf(revision: Revision, { workshop, currency }: Held): Price {
  const lines = revision.lines.map(readLine);
  const totals = revisionTotals(lines, revision.isGross);
  return {
    currency,
    mode: revision.isGross ? 'gross' : 'net',
    lines: shownLines(lines).map((line) => ({ ...line, quantity: '' })),
    totals,
    ...taxOnPaper(lines, totals.breakdown, workshop),
  };
}

/** A price that was asked for counts its days from the arrival, a changed one of a job those that come on top. */
function proposed({ proposal, workingDays, note }: Revision): string[] {
  return [...paragraphs(proposal), ...timeText(workingDays ?? 0, proposal !== ''), ...paragraphs(note)];
}

function timeText(workingDays: number, isFromArrival: boolean): string[] {
  if (workingDays === 0) return [];
  const days = workingDaysWords(workingDays);
  return [
    isFromArrival ? `It usually takes ${days} from the day the unit arrives.` : `It takes ${days} more.`,
  ];
}

/** What became of a price, in one or two sentences; null while it waits for its answer, and where nobody was asked. */
function outcomeOf(revision: Revision, { locale, timeZone }: WorkshopCard): string | null {
  const on = revision.decidedAt ? formatDay(dayInZone(revision.decidedAt, timeZone), locale, 'weekday') : '';
  switch (revision.state) {
    case 'accepted':
      // Also what is owed after a no or a withdrawal: the words are those that were pressed, or told with their day.
      if (revision.decidedBy === BY_TELLING) return revision.agreedText;
      return revision.decidedBy === 'customer' ? `Your answer of ${on}: ${revision.agreedText ?? ''}` : null;
    case 'declined':
      return `You said no on ${on}.`;
    case 'lapsed':
      return 'The day to answer by has passed, and the price is no longer held. Write to us for a new one.';
    case 'replaced':
      return 'This price was taken back or replaced by a later one, and no longer stands.';
    default:
      return null;
  }
}

function paragraphs(text: string): string[] {
  return text
    .split(/\n+/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
}
