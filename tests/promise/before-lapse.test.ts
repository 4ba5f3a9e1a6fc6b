import { expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { promisedBeforeLapse } from '@/lib/promise/rules/before-lapse';

const at = (hour: number) => new Date(Date.UTC(2026, 11, 28, hour));
const lapse = { kind: 'offer-lapsed', at: at(6), toStage: 'assessing', data: { revision: 2 } };
const unsent = { ...lapse, toStage: null };
const moved = (hour: number, from: string | null) => ({
  kind: 'promise-moved',
  at: at(hour),
  toStage: null,
  data: { from, to: '2027-01-05', reason: 'The job waited.' },
});
const message = { kind: 'message-sent', at: at(8), toStage: null, data: {} };

it.each([
  ['the day that the lapse moved', [lapse, moved(6, '2026-12-02'), message], '2026-12-02'],
  ['the day that stands, where the lapse moved none', [lapse, message], '2027-01-05'],
  ['none where the workshop moved it since', [lapse, moved(6, '2026-12-02'), moved(9, '2027-01-05')], null],
  ['nor where only the workshop did', [lapse, moved(9, '2026-12-02')], null],
  ['none where nothing lapsed', [moved(6, '2026-12-02')], null],
  ['nor where what lapsed was never sent', [unsent, moved(6, '2026-12-02')], null],
  [
    'that of the last lapse',
    [lapse, moved(6, '2026-12-02'), { ...lapse, at: at(9) }, moved(9, '2026-12-04')],
    '2026-12-04',
  ],
])('a promise before its price lapsed: %s', (_name, events, on) => {
  expect(promisedBeforeLapse(events, day('2027-01-05'))).toBe(on);
});
