import { describe, expect, it } from 'vitest';
import { taughtChecks } from '@/lib/returns/rules/taught';

const tilt = (label: string) => ({ label, lesson: 'C1' });
const sheet = (version: number, ...taught: { label: string; lesson: string }[]) => ({
  version,
  checks: [{ label: 'Charges', lesson: null }, ...taught],
});
/** On each version ten units were watched, as many came back as its number says, and one is too young. */
const counts = [1, 2, 3, 4].map((version) => ({ version, watched: 10, returned: version, young: 1 }));

describe('a lesson on the versions of a sheet', () => {
  it('is one, however its check is worded later, and what was proved with it is never before it', () => {
    const sheets = [sheet(1), sheet(2, tilt('Tilt the plug')), sheet(3, tilt('Tilt the plug to all sides'))];
    expect(taughtChecks(sheets, counts.slice(0, 3))).toEqual([
      {
        lesson: 'C1',
        label: 'Tilt the plug to all sides',
        version: 2,
        isOff: false,
        before: { units: 10, returned: 1 },
        after: { units: 20, returned: 5 },
        stillWatched: 2,
      },
    ]);
  });

  it('counts on neither side once its check is off the sheet', () => {
    const sheets = [sheet(1), sheet(2, tilt('Tilt')), sheet(3), sheet(4, { label: 'Load', lesson: 'C2' })];
    expect(taughtChecks(sheets, counts)).toMatchObject([
      { lesson: 'C1', isOff: true, before: { units: 10, returned: 1 }, after: { units: 10, returned: 2 } },
      { lesson: 'C2', isOff: false, before: { units: 30, returned: 6 }, after: { units: 10, returned: 4 } },
    ]);
  });

  it('counts again where its check comes back, and names all checks of one claim', () => {
    const sheets = [sheet(1), sheet(2, tilt('Tilt')), sheet(3), sheet(4, tilt('Tilt'), tilt('Pull'))];
    expect(taughtChecks(sheets, counts)).toMatchObject([
      { label: 'Tilt; Pull', version: 2, isOff: false, after: { units: 20, returned: 6 }, stillWatched: 2 },
    ]);
  });

  it('is none where no claim taught anything, or nothing was sent back', () => {
    expect(taughtChecks([sheet(1)], counts)).toEqual([]);
    expect(taughtChecks([sheet(1, tilt('Tilt'))], [])).toMatchObject([
      { before: { units: 0, returned: 0 }, after: { units: 0, returned: 0 } },
    ]);
  });
});
