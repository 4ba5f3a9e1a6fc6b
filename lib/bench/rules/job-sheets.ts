import type { CheckLimits } from './checks';

/*
 * Words of these rules.
 * beside: of a repair that is done together with the one a job is under. Its check sheet must pass as well, before the unit may
 * go back; both stand in one list.
 */

/** What of a check is read at the bench: two that say the same are one, whichever sheet they stand on. */
export type CheckWords = CheckLimits & { label: string; unit: string | null };

type Sheets<S> = { sheet: S; besides: readonly { sheet: S }[] };

type Proved<C> = {
  repair: { name: string };
  sheet: { version: number; checks: readonly C[] };
  besides: readonly { sheet: { version: number; checks: readonly C[]; repair: { name: string } } }[];
};

/** The check sheets that a unit passes, that of the repair its job is under first. */
export function sheetsOf<S>(job: Sheets<S>): S[] {
  return [job.sheet, ...job.besides.map(({ sheet }) => sheet)];
}

/**
 * The same by the repairs' names, each with those checks that no sheet before it has: what two ask in the same words and limits, as
 * that the case is closed, is entered once.
 *
 * Under 'Socket' with [plug holds, case closed], 'Display' with [no dead pixels, case closed] beside it gives 'Socket' with both of
 * its checks and 'Display' with [no dead pixels].
 */
export function provedSheets<C extends CheckWords>(
  job: Proved<C>,
): { repair: string; version: number; checks: C[] }[] {
  const all = [
    { repair: job.repair.name, ...job.sheet },
    ...job.besides.map(({ sheet }) => ({ ...sheet, repair: sheet.repair.name })),
  ];
  const asked = new Set<string>();
  return all.map(({ repair, version, checks }) => {
    const own = checks.filter((check) => !asked.has(wordsOf(check)));
    for (const check of checks) asked.add(wordsOf(check));
    return { repair, version, checks: own };
  });
}

/** Every check that a unit passes, in order; what two sheets ask alike is asked once. */
export function checksOf<C extends CheckWords>(job: Proved<C>): C[] {
  return provedSheets(job).flatMap(({ checks }) => checks);
}

/** 'Battery replaced, version 2; Display replaced, version 1' */
export function sheetNames(sheets: readonly { repair: string; version: number }[]): string {
  return sheets.map(({ repair, version }) => `${repair}, version ${version}`).join('; ');
}

function wordsOf({ label, kind, unit, low, high, choices, passing, pinTable = null }: CheckWords): string {
  return JSON.stringify([label, kind, unit, low, high, choices, passing, pinTable]);
}

type Planned = {
  repair: { minutes: number };
  besides: readonly { sheet: { repair: { minutes: number } } }[];
};

/** Bench minutes planned for all that is done on a job: those of its own repair and of each that is proved beside it. */
export function plannedMinutes({ repair, besides }: Planned): number {
  return besides.reduce((sum, { sheet }) => sum + sheet.repair.minutes, repair.minutes);
}
