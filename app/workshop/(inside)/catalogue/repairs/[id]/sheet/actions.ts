'use server';
import { redirect } from 'next/navigation';
import { onlyCounts, onlyPlain } from '@/app/only-plain';
import { refused } from '@/app/refused';
import type { FormState } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';
import { readTable } from '@/lib/bench/pin-table-records';
import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { connectorChecks } from '@/lib/bench/rules/connector-sheet';
import { mainsChecks } from '@/lib/bench/rules/mains-checks';
import { solderFillCheck } from '@/lib/bench/rules/solder-fill';
import { adding, moving, removing, replacing } from '@/lib/catalogue/rules/sheet-changes';
import { saveCheckSheet } from '@/lib/catalogue/save-check-sheet';
import type { SheetWrite } from '@/lib/catalogue/write-check-sheet';
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { senderOf } from '../../../../../sender-of-form';
import { checkSchema } from './check-schema';
import { placeSchema, readySchema } from './schema';

/** Puts a new check at the end of the sheet. */
export async function addCheckAction(
  repairId: string,
  basedOn: number,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(repairId);
  onlyCounts(basedOn);
  const sender = await senderOf('catalogue', formData);
  if (!sender.ok) return sender.state;
  const parsed = parseForm(checkSchema, formData);
  if (!parsed.ok) return parsed.state;
  if (!(await isConnectorKnown(parsed.data))) return unknownConnector(formData);
  return save({ repairId, basedOn, change: adding(parsed.data) }, formData);
}

/** Replaces one check; a lesson it was taught by a claim stays with it. */
export async function changeCheckAction(
  repairId: string,
  basedOn: number,
  position: number,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(repairId);
  onlyCounts(basedOn, position);
  const sender = await senderOf('catalogue', formData);
  if (!sender.ok) return sender.state;
  const parsed = parseForm(checkSchema, formData);
  if (!parsed.ok) return parsed.state;
  if (!(await isConnectorKnown(parsed.data))) return unknownConnector(formData);
  return save({ repairId, basedOn, change: replacing(position, parsed.data) }, formData);
}

/** Moves one check up or down, or takes it off the sheet. */
export async function moveCheckAction(
  repairId: string,
  basedOn: number,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(repairId);
  onlyCounts(basedOn);
  const sender = await senderOf('catalogue', formData);
  if (!sender.ok) return sender.state;
  const parsed = parseForm(placeSchema, formData);
  if (!parsed.ok) return parsed.state;
  const { position, move } = parsed.data;
  const change = move === 'off' ? removing(position) : moving(position, move === 'up' ? -1 : 1);
  return save({ repairId, basedOn, change }, formData);
}

/** Adds a ready-made set: the checks of a connector, or the template for mains equipment. */
export async function addReadyChecksAction(
  repairId: string,
  basedOn: number,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(repairId);
  onlyCounts(basedOn);
  const sender = await senderOf('catalogue', formData);
  if (!sender.ok) return sender.state;
  const parsed = parseForm(readySchema, formData);
  if (!parsed.ok) return parsed.state;
  const checks = await readyChecks(parsed.data.ready);
  if (!checks) return { errors: { ready: ['Choose a set of checks'] }, values: typedValues(formData) };
  return save({ repairId, basedOn, change: adding(...checks) }, formData);
}

async function isConnectorKnown({ pinTable }: CheckDraft): Promise<boolean> {
  return !pinTable || (await readTable(pinTable)) !== null;
}

function unknownConnector(formData: FormData): FormState {
  return { errors: { pinTable: ['Choose one of the connectors'] }, values: typedValues(formData) };
}

async function readyChecks(key: string) {
  if (key === 'mains-1' || key === 'mains-2') return mainsChecks(key === 'mains-1' ? 1 : 2);
  const fill = solderFillCheck(key);
  if (fill) return [fill];
  const table = await readTable(key);
  return table ? connectorChecks(table) : null;
}

async function save(write: Omit<SheetWrite, 'now'>, formData: FormData): Promise<FormState> {
  const outcome = await attempt(() => saveCheckSheet({ ...write, now: now() }));
  if (!outcome.ok) return refused(outcome.refusal, typedValues(formData));
  redirect(`/workshop/catalogue/repairs/${write.repairId}/sheet?saved=${outcome.value}`);
}
