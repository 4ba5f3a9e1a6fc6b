'use server';
import { onlyCounts, onlyPlain } from '@/app/only-plain';
import { withStoredPhotos } from '@/app/store-photos';
import type { FormAction } from '@/app/ui/forms/form-state';
import { checkSchema } from '@/app/workshop/(inside)/catalogue/repairs/[id]/sheet/check-schema';
import { inspect } from '@/lib/warranty/inspect';
import { learnFromClaim } from '@/lib/warranty/learn';
import { lookAgain } from '@/lib/warranty/look-again';
import { nameRenewed } from '@/lib/warranty/name-renewed';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
import { onClaim } from './claim-kit';
import { inspectionForm, lookAgainForm, renewalForm, rulingForm, secondLookForm } from './schema';

export const answerItem: FormAction<[number: string]> = async (number, _before, formData) =>
  onClaim(number, formData, {
    permission: 'rule-claim',
    schema: inspectionForm,
    part: 'inspection',
    work: (call) =>
      withStoredPhotos(formData, { field: 'photo', most: 1 }, ([photo]) =>
        inspect({ ...call, ...call.data, photo: photo ?? null }),
      ),
  });

export const rule: FormAction<[number: string]> = async (number, _before, formData) =>
  onClaim(number, formData, {
    permission: 'rule-claim',
    schema: rulingForm,
    part: 'ruling',
    work: ({ data: { evidence, letIn, ...data }, ...call }) =>
      ruleOnClaim({ ...call, ...data, isEvidenceClear: evidence, isLetIn: letIn }),
  });

export const decideSecondLook: FormAction<[number: string]> = async (number, _before, formData) =>
  onClaim(number, formData, {
    permission: 'second-look',
    schema: secondLookForm,
    part: 'ruling',
    work: ({ data, ...call }) => takeSecondLook({ ...call, isConfirmed: data.decision === 'confirm' }),
  });

export const openAgain: FormAction<[number: string]> = async (number, _before, formData) =>
  onClaim(number, formData, {
    permission: 'second-look',
    schema: lookAgainForm,
    part: 'ruling',
    work: ({ data, ...call }) => lookAgain({ ...call, ...data }),
  });

/** Names the lines of the certificate that were done again. */
export const nameLines: FormAction<[number: string]> = async (number, _before, formData) =>
  onClaim(number, formData, {
    permission: 'rule-claim',
    schema: renewalForm,
    arrays: ['lines'],
    part: 'renewal',
    work: ({ data, ...call }) => nameRenewed({ ...call, ...data }),
  });

/** Puts a check on the sheet of a repair that the claim is about; `basedOn` is the version the person saw. */
export const teachCheck: FormAction<[number: string, repairId: string, basedOn: number]> = async (
  number,
  repairId,
  basedOn,
  _before,
  formData,
) => {
  onlyPlain(repairId);
  onlyCounts(basedOn);
  return onClaim(number, formData, {
    permission: 'rule-claim',
    schema: checkSchema,
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
};

/** The place of the check that is changed, counted from 1; null where one is added. */
function placeIn(chosen: FormDataEntryValue | null): number | null {
  const place = Number(chosen);
  return Number.isInteger(place) && place > 0 ? place : null;
}
