import type { Counted } from '@/lib/statistics/fisher';

export type SheetVersion = {
  version: number;
  /** `lesson` is the number of the claim that taught the check */
  checks: readonly { label: string; lesson: string | null }[];
};

/** What came back of units proved on one version of a sheet; `young` will count once they were watched long enough. */
export type VersionCount = { version: number; watched: number; returned: number; young: number };

export type Taught = {
  lesson: string;
  /** as it is worded on the last version that holds it; of a claim that taught several checks all of them */
  label: string;
  /** the first version that holds it */
  version: number;
  /** the newest version holds it no more */
  isOff: boolean;
  before: Counted;
  after: Counted;
  stillWatched: number;
};

/**
 * Each lesson of a repair once, whatever its check is called by now, with the units proved before it and with it: after are
 * those of versions that hold a check of the lesson, before those of versions older than the first of them. Units of later
 * versions without it count on neither side. Sheets the oldest first; lessons in the order they were taught.
 *
 * Versions 1 without, 2 and 3 with it, 4 without again: before is 1, after is 2 and 3.
 */
export function taughtChecks(sheets: readonly SheetVersion[], counts: readonly VersionCount[]): Taught[] {
  const lessons = new Set(sheets.flatMap(({ checks }) => checks.flatMap(({ lesson }) => lesson ?? [])));
  return [...lessons].flatMap((lesson) => {
    const holding = sheets.filter(({ checks }) => checks.some((check) => check.lesson === lesson));
    const [first, last] = [holding[0], holding.at(-1)];
    if (!first || !last) return [];
    const versions = new Set(holding.map(({ version }) => version));
    const after = counts.filter(({ version }) => versions.has(version));
    return [
      {
        lesson,
        label: last.checks.flatMap((check) => (check.lesson === lesson ? [check.label] : [])).join('; '),
        version: first.version,
        isOff: last !== sheets.at(-1),
        before: sum(counts.filter(({ version }) => version < first.version)),
        after: sum(after),
        stillWatched: after.reduce((all, { young }) => all + young, 0),
      },
    ];
  });
}

function sum(counts: readonly VersionCount[]): Counted {
  return {
    units: counts.reduce((all, { watched }) => all + watched, 0),
    returned: counts.reduce((all, { returned }) => all + returned, 0),
  };
}
