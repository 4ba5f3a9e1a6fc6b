import { describe, expect, test } from 'vitest';
import { type Cells, type ColumnKey, headOf, type ListSettings } from '@/lib/catalogue/rules/list-columns';
import { type KnownCatalogue, listRows } from '@/lib/catalogue/rules/list-data';
import { planImport } from '@/lib/catalogue/rules/plan-import';

const settings: ListSettings = { currency: 'GBP', pricesIncludeTax: true };
const referred = { policies: ['Connector work', 'Liquid damage work'], parts: ['DIN-5', 'USB-C-24'] };

const known: KnownCatalogue = {
  families: [
    { id: 'f1', slug: 'field-recorders', data: { name: 'Field recorders', position: 1 } },
    { id: 'f2', slug: 'tuners', data: { name: 'Tuners', position: 2 } },
  ],
  models: [
    {
      id: 'm1',
      slug: 'tideline-gull',
      familySlug: 'field-recorders',
      data: {
        maker: 'Tideline',
        name: 'Gull',
        aliases: ['TG-1'],
        accessories: ['USB cable', 'Belt clip'],
        weightGrams: 120,
        lengthMm: 96,
        widthMm: 52,
        heightMm: 21,
        tariffNumber: '851981',
        serialPlace: 'Under the belt clip',
        serialExample: 'G-118 402',
        serialPattern: 'G\\d{6}',
        serialRule: 'none',
        battery: 'lithium-ion',
        batteryWh: 3.7,
        isMainsPowered: false,
        isListed: true,
      },
    },
  ],
  repairs: [
    {
      id: 'r1',
      slug: 'usb-socket',
      modelSlug: 'tideline-gull',
      data: {
        name: 'USB-C socket replaced',
        summary: 'Old socket off, new socket on.',
        priceMinor: 5800,
        taxCategory: 'S',
        taxRateBps: 2000,
        minutes: 50,
        workingDays: 5,
        symptoms: ['Does not charge'],
        policy: 'Connector work',
        parts: [{ code: 'USB-C-24', quantity: 1 }],
        isListed: true,
      },
    },
    {
      id: 'r2',
      slug: 'midi',
      modelSlug: 'tideline-gull',
      data: {
        name: 'MIDI sockets replaced',
        summary: 'Both of them.',
        priceMinor: 6000,
        taxCategory: 'E',
        taxRateBps: 0,
        minutes: 55,
        workingDays: 5,
        symptoms: ['Notes hang; or are lost'],
        policy: 'Connector work',
        parts: [{ code: 'DIN-5', quantity: 2 }],
        isListed: false,
      },
    },
  ],
};

const own = listRows(known, settings);
const [usb, midi, tuners] = own.map((cells, i) => ({ row: i + 2, cells }));
if (!usb || !midi || !tuners) throw new Error('the catalogue has three rows');

const plan = (...rows: { row: number; cells: Cells }[]) => planImport({ rows, known, referred, settings });
const with_ = (base: { row: number; cells: Cells }, cells: Partial<Cells>, row = base.row) => ({
  row,
  cells: { ...base.cells, ...cells },
});
const problemsOf = (found: ReturnType<typeof plan>) =>
  found.problems.map(({ row, column }) => [row, column && headOf(column, settings)]);

describe('the catalogue’s own rows', () => {
  test('change nothing: one for a repair, one for a family without models', () => {
    expect(own).toHaveLength(3);
    expect(plan(usb, midi, tuners)).toEqual({
      families: [],
      models: [],
      repairs: [],
      unchanged: { families: 2, models: 1, repairs: 2 },
      problems: [],
    });
  });

  test('a model without repairs has a row too', () => {
    const [row, ...rest] = listRows({ ...known, repairs: [] }, settings);
    expect(row).toMatchObject({ modelAddress: 'tideline-gull', repairAddress: '', price: '' });
    expect(rest).toHaveLength(1);
  });
});

describe('a changed cell', () => {
  test.each<[ColumnKey, string, string, string]>([
    ['price', '63.50', '58.00', '63.50'],
    ['price', '63,50', '58.00', '63.50'],
    ['taxRate', '5,5', '20', '5.5'],
    ['parts', 'din-5 x2; USB-C-24', 'USB-C-24', 'DIN-5 x2; USB-C-24'],
    ['policy', 'liquid damage work', 'Connector work', 'Liquid damage work'],
    ['repairListed', 'No', 'yes', 'no'],
  ])('%s "%s" of a repair changes it', (column, typed, before, after) => {
    const found = plan(with_(usb, { [column]: typed }));
    expect(found.problems).toEqual([]);
    expect(found.repairs).toMatchObject([{ id: 'r1', row: 2, fields: [{ column, before, after }] }]);
    expect(found.models).toEqual([]);
  });

  test('of a model stands in each of its rows, and changes it once', () => {
    const found = plan(with_(usb, { weight: '125' }), with_(midi, { weight: '125' }));
    expect(found.problems).toEqual([]);
    expect(found.models).toMatchObject([{ id: 'm1', fields: [{ column: 'weight', after: '125' }] }]);
  });

  test('in one row of a model alone is a fault of the other', () => {
    expect(problemsOf(plan(with_(usb, { weight: '125' }), midi))).toEqual([[3, 'Weight g']]);
  });

  test('that cannot be read is told once, not as a difference too', () => {
    expect(problemsOf(plan(usb, with_(midi, { weight: 'heavy' })))).toEqual([[3, 'Weight g']]);
  });

  test('of the family moves the model', () => {
    const move = { familyAddress: 'tuners', family: 'Tuners', familyPlace: '2' };
    const found = plan(with_(usb, move), with_(midi, move));
    expect(found.problems).toEqual([]);
    expect(found.models).toMatchObject([
      { id: 'm1', data: { familySlug: 'tuners' }, fields: [{ column: 'familyAddress', after: 'tuners' }] },
    ]);
  });
});

describe('something new', () => {
  const strange = { modelAddress: '', model: 'Gull Two', repairAddress: '' };

  test('has an empty address and gets a free one, the same for all its rows', () => {
    const found = plan(with_(usb, strange), with_(midi, strange));
    expect(found.problems).toEqual([]);
    expect(found.models).toMatchObject([{ id: null, slug: 'tideline-gull-two', fields: [] }]);
    expect(found.repairs.map((repair) => [repair.slug, repair.data.modelSlug])).toEqual([
      ['usb-c-socket-replaced', 'tideline-gull-two'],
      ['midi-sockets-replaced', 'tideline-gull-two'],
    ]);
    expect(found.unchanged).toMatchObject({ families: 1, models: 0 });
  });

  test('never gets an address that another row brings along', () => {
    const other = { modelAddress: 'tideline-gull-two', model: 'Gull 2', repairAddress: '' };
    const found = plan(with_(usb, strange), with_(usb, other, 3));
    expect(found.models.map((model) => model.slug)).toEqual(['tideline-gull-two-2', 'tideline-gull-two']);
  });

  test('may bring a whole catalogue to an empty workshop, addresses and all', () => {
    const none = { families: [], models: [], repairs: [] };
    const found = planImport({ rows: [usb, midi, tuners], known: none, referred, settings });
    expect(found.problems).toEqual([]);
    expect(found.families.map((family) => family.slug)).toEqual(['field-recorders', 'tuners']);
    expect(found.repairs.map((repair) => repair.slug)).toEqual(['usb-socket', 'midi']);
  });

  test('with the name of something known is not guessed at', () => {
    expect(problemsOf(plan(with_(usb, { familyAddress: '', modelAddress: '', repairAddress: '' })))).toEqual([
      [2, 'Family address'],
      [2, 'Model address'],
    ]);
    expect(problemsOf(plan(with_(usb, { repairAddress: '' })))).toEqual([[2, 'Repair address']]);
  });

  test('twice is a fault', () => {
    expect(problemsOf(plan(usb, with_(usb, {}, 7)))).toEqual([[7, 'Repair address']]);
    const fresh = { repairAddress: '', repair: 'Belt clip replaced' };
    expect(problemsOf(plan(with_(usb, fresh), with_(usb, fresh, 7)))).toEqual([[7, 'Repair address']]);
    const elsewhere = {
      familyAddress: '',
      family: 'Pedals',
      modelAddress: '',
      model: 'A',
      repairAddress: '',
    };
    const named = { ...elsewhere, familyAddress: 'pedals-too', model: 'B' };
    expect(problemsOf(plan(with_(usb, elsewhere), with_(usb, named, 3)))).toEqual([[3, 'Family address']]);
  });
});

describe('a fault', () => {
  test.each<[string, Partial<Cells>, string[]]>([
    ['an empty family', { family: '' }, ['Family']],
    ['a place that is no number', { familyPlace: 'first' }, ['Family place']],
    ['an address in capitals', { modelAddress: 'Tideline Gull' }, ['Model address']],
    ['half a size', { width: '' }, ['Width mm']],
    ['a tariff number that is none', { tariffNumber: '85X' }, ['Tariff number']],
    ['a weight with a unit', { weight: '120 g' }, ['Weight g']],
    ['a pattern that takes for ever', { serialPattern: '(a+)+' }, ['Serial pattern']],
    ['a check nobody knows', { serialRule: 'mod-7' }, ['Serial check']],
    ['no word on the battery', { battery: '' }, ['Battery']],
    ['a lithium battery without size', { batteryWh: '' }, ['Battery Wh']],
    ['a size of a battery of nothing', { batteryWh: '0' }, ['Battery Wh']],
    ['a size where there is no battery', { battery: 'none' }, ['Battery Wh']],
    ['neither yes nor no', { mains: 'maybe', modelListed: '' }, ['Mains inside', 'Model listed']],
    ['no name of the repair', { repair: '' }, ['Repair']],
    ['a price that is none', { price: 'free' }, ['Price with tax']],
    ['a price below nothing', { price: '-1' }, ['Price with tax']],
    ['a price that may be two', { price: '1,234' }, ['Price with tax']],
    ['another currency', { currency: 'EUR' }, ['Currency']],
    ['a tax nobody knows', { tax: 'X' }, ['Tax']],
    ['a rate on an exemption', { tax: 'E' }, ['Tax rate %']],
    ['a standard rate of nothing', { taxRate: '0' }, ['Tax rate %']],
    ['minutes of nothing', { minutes: '0' }, ['Bench minutes']],
    ['days past a year', { workingDays: '251' }, ['Working days']],
    ['no symptom', { symptoms: '; ' }, ['Symptoms']],
    ['a policy nobody wrote', { policy: 'Old work' }, ['Policy']],
    ['parts nobody stocks, and one twice', { parts: 'X-1; DIN-5; din-5; Y' }, ['Parts', 'Parts', 'Parts']],
    ['no piece of a part', { parts: 'DIN-5 x0' }, ['Parts']],
    ['a name past all bounds', { repair: 'x'.repeat(121) }, ['Repair']],
    ['a repair without a model', { maker: '', model: '' }, ['Maker', 'Model']],
  ])('%s is told at its column', (_, cells, columns) => {
    expect(problemsOf(plan(with_(usb, cells)))).toEqual(columns.map((column) => [2, column]));
  });

  test('does not hide the next: every one of every row is told, in the order of the file', () => {
    const found = plan(
      with_(usb, { price: '', minutes: 'x', family: '', mains: '' }),
      with_(usb, { familyAddress: 'tuners', family: 'Tuners', familyPlace: '2', modelAddress: 'other' }, 3),
      with_(midi, { modelAddress: 'third', policy: '?', batteryWh: 'big', family: '' }, 4),
    );
    expect(problemsOf(found)).toEqual([
      [2, 'Family'],
      [2, 'Mains inside'],
      [2, 'Price with tax'],
      [2, 'Bench minutes'],
      [4, 'Family'],
      [4, 'Battery Wh'],
      [4, 'Policy'],
    ]);
  });
});
