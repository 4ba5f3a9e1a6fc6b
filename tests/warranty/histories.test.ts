import { describe, expect, it } from 'vitest';
import { boxingDay } from './histories/boxing-day';
import { leapDay } from './histories/leap-day';
import { oldPaper } from './histories/old-paper';
import { oneLetter } from './histories/one-letter';
import { pulledSideways } from './histories/pulled-sideways';
import { quietYear } from './histories/quiet-year';
import { threeWeeksAway } from './histories/three-weeks-away';
import { twiceAtTheEnd } from './histories/twice-at-the-end';
import { twoMonths } from './histories/two-months';
import { workAndPart } from './histories/work-and-part';
import { play } from './history';

/** Ten made-up units of Quay & Alder. Every date and answer in the tables was worked out by hand. */
const histories = [
  quietYear,
  boxingDay,
  threeWeeksAway,
  twiceAtTheEnd,
  leapDay,
  workAndPart,
  oneLetter,
  oldPaper,
  pulledSideways,
  twoMonths,
];

for (const history of histories) {
  describe(`${history.title}: ${history.unit}`, () => {
    const followed = play(history);
    it.each(history.rows.map((row, i) => ({ on: row.on, does: row.does, row, i })))(
      '$on: $does',
      ({ row, i }) => {
        expect(followed[i]).toEqual(row.follows);
      },
    );
  });
}

describe('the histories together', () => {
  it('end in every answer', () => {
    const answers = histories.flatMap(({ rows }) =>
      rows.flatMap((row) => (row.does === 'asks' ? [row.follows.answer] : [])),
    );
    expect([...new Set(answers)].sort()).toEqual([
      'already-open',
      'confirm-serial',
      'covered-subject-to-inspection',
      'lapsed',
      'not-recognised',
      'other-unit',
      'outside-cover',
    ]);
  });

  it('are told in the order of the calendar', () => {
    for (const { rows } of histories) {
      const days = rows.map(({ on }) => on.slice(0, 10));
      expect(days).toEqual([...days].sort());
    }
  });
});
