'use server';
import { refresh } from 'next/cache';
import { onlyPlain } from '@/app/only-plain';
import type { FormAction } from '@/app/ui/forms/form-state';
import { typedValues } from '@/app/ui/forms/typed-values';
import { jobRefused } from '@/app/workshop/job-refused';
import { senderOf } from '@/app/workshop/sender-of-form';
import { staffActor } from '@/app/workshop/staff-actor';
import { leaveBeside } from '@/lib/bench/leave-beside';
import { proveBeside } from '@/lib/bench/prove-beside';
import { recordCheck, recordChecks } from '@/lib/bench/record-check';
import { checksOf } from '@/lib/bench/rules/job-sheets';
import { takeNewestSheet } from '@/lib/bench/take-newest-sheet';
import { now } from '@/lib/clock';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { putUnderRepair } from '@/lib/jobs/put-under-repair';
import { attempt } from '@/lib/outcome';
import { onJob } from '../action-kit';
import { besideForm, newestSheetForm, nothingForm, underRepairForm } from '../schema';
import { connectorForm } from './connector-form-schema';
import { readResults, textsOf } from './read-results';

/**
 * Enters one check of the sheet, or all that are filled in. The whole sheet is one form, so that what was typed at the other checks
 * comes back with the answer, refused or not, with script or without.
 */
export const enterChecks: FormAction<[number: string]> = async (number, _before, formData) => {
  onlyPlain(number);
  const sender = await senderOf('bench', formData);
  if (!sender.ok) return sender.state;
  const { staff } = sender;
  const job = await jobByNumber(number);
  if (!job) return { message: 'There is no job with this number.' };
  const values = typedValues(formData);
  const texts = textsOf(values);
  const asked = texts('check');
  const results = readResults(checksOf(job), texts, asked);
  if (results.length === 0) return { message: 'Nothing is filled in yet.', values };
  const tooLong = results.find((result) => result.note.length > 500);
  if (tooLong) return { errors: { [`note-${tooLong.checkId}`]: ['Keep this to 500 characters'] }, values };
  const outcome = await attempt(() =>
    recordChecks({ jobId: job.id, actor: staffActor(staff), now: now(), results, hasManyFields: true }),
  );
  if (!outcome.ok)
    return jobRefused(outcome.refusal, { jobNumber: job.number, version: job.version, values });
  refresh();
  const entered = new Set(results.map((result) => result.checkId));
  const labels = new Map(checksOf(job).map((check) => [check.id, check.label]));
  const named = (wasPassed: boolean) =>
    results
      .filter((_, index) => outcome.value[index] === wasPassed)
      .map(({ checkId }) => labels.get(checkId) ?? '');
  const failed = named(false);
  return {
    done: enteredWords(named(true), failed),
    isDoneBadly: failed.length > 0,
    values: Object.fromEntries(
      Object.entries(values).filter(([name]) => !entered.has(name.slice(name.indexOf('-') + 1))),
    ),
  };
};

/** enteredWords(['Voltage'], ['Ripple']) -> 'Failed: Ripple. Passed: Voltage.' */
function enteredWords(passed: readonly string[], failed: readonly string[]): string {
  if (failed.length === 0) return `Entered: ${passed.join('; ')}. Nothing failed.`;
  return `Failed: ${failed.join('; ')}.${passed.length === 0 ? '' : ` Passed: ${passed.join('; ')}.`}`;
}

/** Puts the job on the newest version of its sheet. */
export const takeNewest: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'catalogue',
    schema: newestSheetForm,
    part: 'version',
    page: '/sheet',
    work: ({ data, ...call }) => takeNewestSheet({ ...call, sheetVersion: data.sheet }),
  });

/** Puts the job under another repair of the catalogue, and on its check sheet. */
export const putUnder: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'bench',
    schema: underRepairForm,
    part: 'under',
    page: '/sheet',
    work: ({ data, ...call }) => putUnderRepair({ ...call, repairId: data.repair }),
  });

/** Has the unit pass another repair's check sheet as well. */
export const proveBesideAction: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'bench',
    schema: besideForm,
    part: 'beside',
    page: '/sheet',
    work: ({ data, ...call }) => proveBeside({ ...call, repairId: data.beside }),
  });

/** Takes such a sheet away again. */
export const leaveBesideAction: FormAction<[number: string, besideId: string]> = async (
  number,
  besideId,
  _before,
  formData,
) => {
  onlyPlain(besideId);
  return onJob(number, formData, {
    permission: 'bench',
    schema: nothingForm,
    part: 'beside',
    page: '/sheet',
    work: ({ data: _, ...call }) => leaveBeside({ ...call, besideId }),
  });
};

/** Enters a connector sheet: what every probe read, in one go. */
export const enterConnector: FormAction<[number: string, checkId: string]> = async (
  number,
  checkId,
  _before,
  formData,
) => {
  onlyPlain(checkId);
  return onJob(number, formData, {
    permission: 'bench',
    schema: connectorForm,
    part: `check-${checkId}`,
    page: '/sheet',
    work: ({ data, formKey, ...call }) =>
      recordCheck({
        jobId: call.jobId,
        actor: call.actor,
        now: call.now,
        checkId,
        given: { probes: data.probes },
        note: data.note,
        entryId: formKey,
      }),
  });
};
