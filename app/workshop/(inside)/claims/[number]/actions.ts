'use server';
import { onlyCounts, onlyPlain } from '@/app/only-plain';
import { withStoredPhotos } from '@/app/store-photos';
import type { FormState } from '@/app/ui/forms/form-state';
import { checkSchema } from '@/app/workshop/(inside)/catalogue/repairs/[id]/sheet/check-schema';
import { inspect } from '@/lib/warranty/inspect';
import { learnFromClaim } from '@/lib/warranty/learn';
import { lookAgain } from '@/lib/warranty/look-again';
import { nameRenewed } from '@/lib/warranty/name-renewed';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
import { onClaim } from './claim-kit';
import { inspectionForm, lookAgainForm, renewalForm, rulingForm, secondLookForm } from './schema';

export async function answerItem(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onClaim({
    permission: 'rule-claim',
    number,
    schema: inspectionForm,
    formData,
    part: 'inspection',
    work: (call) =>
      withStoredPhotos(formData, { field: 'photo', most: 1 }, ([photo]) =>
        inspect({ ...call, ...call.data, photo: photo ?? null }),
      ),
  });
}

export async function rule(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onClaim({
    permission: 'rule-claim',
    number,
    schema: rulingForm,
    formData,
    part: 'ruling',
    work: ({ data: { evidence, letIn, ...data }, ...call }) =>
      ruleOnClaim({ ...call, ...data, isEvidenceClear: evidence, isLetIn: letIn }),
  });
}

export async function decideSecondLook(
  number: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  return onClaim({
    permission: 'second-look',
    number,
    schema: secondLookForm,
    formData,
    part: 'ruling',
    work: ({ data, ...call }) => takeSecondLook({ ...call, isConfirmed: data.decision === 'confirm' }),
  });
}

export async function openAgain(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onClaim({
    permission: 'second-look',
    number,
    schema: lookAgainForm,
    formData,
    part: 'ruling',
    work: ({ data, ...call }) => lookAgain({ ...call, ...data }),
  });
}

/** Names the lines of the certificate that were done again. */
export async function nameLines(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onClaim({
    permission: 'rule-claim',
    number,
    schema: renewalForm,
    arrays: ['lines'],
    formData,
    part: 'renewal',
    work: ({ data, ...call }) => nameRenewed({ ...call, ...data }),
  });
}

/** Puts a check on the sheet of a repair that the claim is about; `basedOn` is the version the person saw. */
export async function teachCheck(
  number: string,
  repairId: string,
  basedOn: number,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(repairId);
  onlyCounts(basedOn);
  return onClaim({
    permission: 'rule-claim',
    number,
    schema: checkSchema,
    formData,
    part: 'lesson',
    work: ({ data, ...call }) =>
      learnFromClaim({
        ...call,
        repairId,
        basedOn,
        check: data,
        replaces: placeIn(formData.get('replaces')),
      }),
  });
}

/** The place of the check that is changed, counted from 1; null where one is added. */
function placeIn(chosen: FormDataEntryValue | null): number | null {
  const place = Number(chosen);
  return Number.isInteger(place) && place > 0 ? place : null;
}
