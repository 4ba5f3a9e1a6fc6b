import { expect, test } from 'vitest';
import {
  type AgreedPrice,
  agreedBeside,
  type Change,
  changesInstead,
  minutesAgreed,
  namesAgreed,
  namesBefore,
  namesLeftOut,
  repairsAgreed,
} from '@/lib/jobs/rules/agreed-work';

const AGREED = new Date('2026-12-01T10:00:00Z');
const change = (hours: number, from: string, formerly: string[] = [], minutesBefore?: number): Change => ({
  at: new Date(AGREED.getTime() + hours * 3_600_000),
  from,
  formerly,
  minutesBefore,
});

const price = (labour: string[], over: Partial<AgreedPrice> = {}): AgreedPrice => ({
  agreedAt: AGREED,
  labour,
  under: { name: 'Lamp', formerNames: ['Bulb'] },
  ...over,
});

test.each([
  [
    'are those of the repair it was under when the price was agreed',
    [change(-1, 'Screen', [], 5), change(2, 'Socket', [], 60), change(3, 'Fader', [], 90)],
    ['Socket'],
    60,
  ],
  [
    'are those of the one it is under, where it was put there by that yes',
    [change(0, 'Battery', [], 30)],
    ['Battery'],
    20,
  ],
  ['and where nobody kept those of the one before', [change(2, 'Socket')], ['Socket'], 20],
  ['and where the price names that one itself', [change(2, 'Socket', [], 60)], ['Socket', 'Lamp'], 20],
  [
    'and of the one before, where the price names that one',
    [change(2, 'Socket', [], 60), change(3, 'Fader', [], 90)],
    ['Socket', 'Fader'],
    90,
  ],
])('the minutes planned for an agreed price %s', (_name, changes, labour, expected) => {
  expect(minutesAgreed(changesInstead(changes, price(labour)), 20)).toBe(expected);
});

test('a price may bear the names of repairs that the job was under when it was agreed', () => {
  const changes = [
    change(-1, 'Screen'),
    change(0, 'Battery'),
    change(2, 'Socket', ['Port']),
    change(3, 'Fader'),
  ];
  const before = (over: Partial<AgreedPrice>) =>
    namesBefore(changesInstead(changes, price(['Socket'], over)));
  expect(before({})).toEqual(['Socket', 'Port', 'Fader']);
  expect(before({ agreedAt: null, labour: [] })).toEqual(['Screen', 'Battery', 'Socket', 'Port', 'Fader']);
  expect(before({ labour: ['Socket', 'Bulb'] })).toEqual([]);
  expect(namesBefore([])).toEqual([]);
});

const KNOWN = new Set(['Screen', 'Battery', 'Socket', 'Port', 'Fader', 'Lamp', 'Bulb']);

test.each<[string, string[], Change[], string[], string[]]>([
  ['as it says, where nothing changed', ['Socket', 'Fader'], [], ['Socket', 'Fader'], []],
  [
    'without the line that stands for what is done instead',
    ['Socket', 'Fader'],
    [change(1, 'Socket')],
    ['Fader'],
    [],
  ],
  [
    'with the line of the one before, where it names the one it is under',
    ['Socket', 'Lamp'],
    [change(1, 'Socket')],
    ['Socket', 'Lamp'],
    ['Socket'],
  ],
  [
    'so under a name the one it is under had',
    ['Socket', 'Bulb'],
    [change(1, 'Socket')],
    ['Socket', 'Bulb'],
    ['Socket'],
  ],
  [
    'with the one before, where only words of its own can mean it',
    ['Rebuilt', 'Lamp'],
    [change(1, 'Socket', ['Port'])],
    ['Rebuilt', 'Lamp', 'Socket', 'Port'],
    ['Socket', 'Port'],
  ],
  [
    'once, where it is named and there are words of its own',
    ['Port', 'Rebuilt', 'Lamp'],
    [change(1, 'Socket', ['Port'])],
    ['Port', 'Rebuilt', 'Lamp'],
    ['Socket', 'Port'],
  ],
  [
    'without the one before, where every line names another repair',
    ['Fader', 'Lamp'],
    [change(1, 'Socket')],
    ['Fader', 'Lamp'],
    ['Socket'],
  ],
  [
    'with the first of several',
    ['Socket', 'Lamp'],
    [change(1, 'Socket'), change(2, 'Screen')],
    ['Socket', 'Lamp'],
    ['Socket'],
  ],
  [
    'as it says, where the yes itself put the job there',
    ['Rebuilt', 'Lamp'],
    [change(0, 'Socket')],
    ['Rebuilt', 'Lamp'],
    [],
  ],
  [
    'without the line of the one that was left again for another, and with that of the first',
    ['Socket', 'Fader'],
    [change(1, 'Socket'), change(2, 'Fader')],
    ['Socket'],
    ['Socket'],
  ],
  [
    'as it says, where the job is back under the first',
    ['Rebuilt', 'Fader'],
    [change(1, 'Lamp'), change(2, 'Fader')],
    ['Rebuilt', 'Fader'],
    [],
  ],
])('an agreed price is for its work %s', (_name, labour, changes, expected, beside) => {
  expect(namesAgreed(changes, price(labour), KNOWN)).toEqual(expected);
  expect(agreedBeside(changes, price(labour))).toEqual(beside);
});

test('the repairs an agreed price names are those of the model, by any name they had, but for the one the job is under', () => {
  const repair = (id: string, name: string, formerNames: string[] = []) => ({ id, name, formerNames });
  const repairs = [
    repair('f', 'Fader'),
    repair('l', 'Lamp', ['Bulb']),
    repair('s', 'Socket, both', ['Socket']),
    repair('w', 'Screen'),
  ];
  const named = (labour: string[], changes: Change[], underId = 'l') =>
    repairsAgreed(repairs, { changes, price: price(labour), underId }).map(({ id }) => id);
  expect(named(['Socket', 'Lamp', 'Case polished'], [])).toEqual(['s']);
  expect(named(['Socket', 'Fader'], [change(1, 'Socket')])).toEqual(['f']);
  expect(named(['Rebuilt', 'Bulb'], [change(1, 'Socket')])).toEqual(['s']);
  expect(named(['Socket', 'Lamp'], [], 's')).toEqual(['l']);
  expect(named([], [])).toEqual([]);
});

test.each<[string, [hours: number, kind: string, data: object][], string[]]>([
  ['what was left out since', [[1, 'sheet-beside-removed', { repair: 'Socket' }]], ['Socket']],
  ['nothing that was left out of the price before', [[0, 'sheet-beside-removed', { repair: 'Socket' }]], []],
  [
    'nothing that was added again',
    [
      [1, 'sheet-beside-removed', { repair: 'Socket' }],
      [2, 'sheet-beside-added', { repair: 'Socket', sheet: 1 }],
    ],
    [],
  ],
  [
    'what was left out again',
    [
      [1, 'sheet-beside-removed', { repair: 'Socket' }],
      [2, 'sheet-beside-added', { repair: 'Socket', sheet: 1 }],
      [3, 'sheet-beside-removed', { repair: 'Socket' }],
    ],
    ['Socket'],
  ],
  [
    'nothing that the job was under since, by the name it had',
    [
      [1, 'sheet-beside-removed', { repair: 'Port' }],
      [1, 'sheet-beside-removed', { repair: 'Lamp' }],
      [1, 'sheet-beside-removed', { repair: 'Fader' }],
      [2, 'repair-changed', { from: 'Socket', formerly: ['Port'], to: 'Lamp', sheet: 1 }],
    ],
    ['Fader'],
  ],
  ['nothing by another event', [[1, 'part-not-needed', { partId: 'p', part: 'Socket' }]], []],
])('the bench left out of an agreed price %s', (_name, events, expected) => {
  const history = events.map(([hours, kind, data]) => ({ at: change(hours, '').at, kind, data }));
  expect([...namesLeftOut(history, AGREED)]).toEqual(expected);
});
