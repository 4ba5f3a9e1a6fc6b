'use server';
import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { formPhotos, photoFormProblem } from '@/app/form-photos';
import { limitCaller, lookUpNumber } from '@/app/limit-caller';
import { onlyCounts, onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormAction } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { waitSentence } from '@/app/ui/forms/wait-sentence';
import { routeTo } from '@/app/ui/page/route-to';
import { cellsOf, recalledPieces } from '@/lib/bench/stored-recalls';
import { now } from '@/lib/clock';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { postedAnswer } from '@/lib/jobs/rules/posted-answer';
import { attempt } from '@/lib/outcome';
import { askAboutClaim } from '@/lib/warranty/assess-claim';
import { claimFormat } from '@/lib/warranty/claim-format';
import { modelOfCertificate } from '@/lib/warranty/model-of-certificate';
import { openClaim, opensClaim } from '@/lib/warranty/open-claim';
import { type Chain, readChain, unitOfChain } from '@/lib/warranty/records';
import { answerHeading, nextStepSentence, sentence } from '@/lib/warranty/rules/reason-sentences';
import type { Assessment } from '@/lib/warranty/rules/reasons';
import { readWorkshop } from '@/lib/workshop/records';
import { CLAIM_LIMIT } from '../limit';
import type { AnswerView, ClaimState } from './claim-state';
import { askForm, openForm } from './schema';

/** Both halves of the claim form. The second half is worked out again from the start: hidden fields prove nothing. */
export const claim: FormAction<[number: string, revision: number], ClaimState> = async (
  number,
  revision,
  _before,
  formData,
) => {
  onlyPlain(number);
  onlyCounts(revision);
  if (formData.get('change') === 'yes') return { phase: 'ask', values: typedValues(formData) };
  const isOpen = formData.get('phase') === 'open';
  const limit = await limitCaller('claim', CLAIM_LIMIT);
  const sought = limit.allowed ? await lookUpNumber(number, () => readChain(number)) : limit;
  if (!sought.allowed) {
    const message = waitSentence(sought.waitSeconds);
    return { message, values: typedValues(formData), phase: isOpen ? 'open' : 'ask' };
  }
  return isOpen ? open(number, revision, formData) : ask(number, revision, formData);
};

async function ask(number: string, revision: number, formData: FormData): Promise<ClaimState> {
  const parsed = parseForm(askForm, formData);
  if (!parsed.ok) return { ...parsed.state, phase: 'ask' };
  const { serial, symptom, details } = parsed.data;
  const { assessment, chain } = await askAboutClaim({
    certificateNumber: number,
    revision,
    serial,
    symptom,
    now: now(),
  });
  const goesOn = opensClaim(assessment, true);
  return {
    phase: goesOn ? 'open' : 'ask',
    needsPhoto: assessment.answer === 'confirm-serial',
    answer: await answerView(assessment, chain),
    values: { ...typedValues(formData), serial, symptom, details },
  };
}

async function open(number: string, revision: number, formData: FormData): Promise<ClaimState> {
  const asked = await ask(number, revision, formData);
  if (asked.phase !== 'open') return asked;
  const { answer, needsPhoto } = asked;
  const half = { phase: 'open', answer, needsPhoto } as const;
  const assessed = await askAboutClaim({
    certificateNumber: number,
    revision,
    serial: String(formData.get('serial') ?? ''),
    symptom: String(formData.get('symptom') ?? ''),
    now: now(),
  });
  if (!assessed.chain) return asked;
  const model = await modelOfCertificate(assessed.chain.inForce.jobId);
  if (model.battery === 'none') formData.set('battery', 'none');
  const { photos, kept, problem } = await formPhotos(formData, { most: MOST_PHOTOS, now: now() });
  const typed = { ...typedValues(formData), kept };
  const parsed = parseForm(openForm, formData);
  const wrong = photoFormProblem(parsed, problem);
  if (!parsed.ok || wrong) return { ...half, ...wrong, values: typed };
  if (needsPhoto && photos.length === 0) {
    return { ...half, errors: { photos: ['Add a photo of the serial on the unit'] }, values: typed };
  }
  const cells = await doubtfulCells(assessed.chain);
  const verdict = postedAnswer(model, parsed.data.battery, cells);
  // A cell of ours in doubt must not cost anybody their claim: it opens and counts from today, without a packing slip.
  if (verdict.may === 'do-not-post' && cells.length === 0) {
    const stop = ['Please do not post it.', ...verdict.reasons, ...verdict.insteadSteps].join(' ');
    return { ...half, errors: { battery: [stop] }, values: typed };
  }
  const { serial, symptom, details, battery, data, ...address } = parsed.data;
  const outcome = await attempt(() =>
    openClaim({
      certificateNumber: number,
      revision,
      serial,
      symptom,
      details,
      batteryAnswer: battery,
      dataAnswer: data,
      address,
      photos,
      now: now(),
    }),
  );
  if (!outcome.ok) return { ...half, ...refused(outcome.refusal, typed) };
  const result = outcome.value;
  if (result.opened) redirect(`/job/${result.token}?booked=claim`);
  return {
    phase: 'ask',
    answer: await answerView(result.assessment, assessed.chain),
    values: { ...typed, serial, symptom, details },
  };
}

/** Cells in the unit that we fitted and are no longer sure of. */
async function doubtfulCells(chain: Chain): Promise<string[]> {
  return cellsOf(await recalledPieces(unitOfChain(chain)));
}

async function answerView(assessment: Assessment, chain: Chain | null): Promise<AnswerView> {
  const workshop = await readWorkshop();
  const format = claimFormat(workshop);
  const hasDoubtfulCell = chain !== null && (await doubtfulCells(chain)).length > 0;
  return {
    answer: assessment.answer,
    heading: answerHeading(assessment),
    sentences: assessment.reasons.map((reason) => sentence(reason, format)),
    next: assessment.nextStep ? nextStepSentence(assessment.nextStep, format, hasDoubtfulCell) : null,
    links: linksOf(assessment, chain, workshop),
    isGood: assessment.answer === 'covered-subject-to-inspection',
  };
}

/**
 * To a paid repair by the price list, where the model still stands on it, and by a question; and where a claim is open that somebody
 * else may have opened, the address to write to.
 */
function linksOf(
  { nextStep }: Assessment,
  chain: Chain | null,
  { email }: { email: string },
): AnswerView['links'] {
  if (nextStep?.kind === 'book-paid-repair') {
    const model = chain?.inForce.job.model;
    const prices = model?.isListed
      ? [{ href: routeTo(`/prices/${model.slug}`), label: 'Prices for this unit' }]
      : [];
    const ask: Route = model?.isListed ? `/quote/ask?model=${model.id}` : '/quote/ask';
    return [...prices, { href: ask, label: 'Ask us for a price' }];
  }
  if (nextStep?.kind !== 'see-open-claim' || email === '') return [];
  return [{ href: `mailto:${email}`, label: `Write to ${email}` }];
}
