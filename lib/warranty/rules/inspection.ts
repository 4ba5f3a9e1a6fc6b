export type InspectionStage = 'before-opening' | 'after-opening';
export type InspectionAnswer = 'yes' | 'no' | 'unclear';

export type InspectionItem = {
  /** Stored with the claim; never renamed. */
  key: string;
  label: string;
  stage: InspectionStage;
  /** What to watch out for at this item; the maker's data, local codes and licensed practice come first. */
  caution: string | null;
};

/** What is looked at on a unit that came back, in this order. Each item gets yes, no or unclear, and a photo. Common practice, no source. */
export const INSPECTION_ITEMS = [
  { key: 'outside-damage', label: 'Damage on the outside', stage: 'before-opening', caution: null },
  {
    key: 'liquid-signs-outside',
    label: 'Liquid signs outside: stains, corrosion in the sockets, a coloured indicator',
    stage: 'before-opening',
    caution: 'Keep power off a unit that is wet, hot, swollen or smells burnt.',
  },
  {
    key: 'seal-and-screws',
    label: 'Seal broken, or screws moved or missing',
    stage: 'before-opening',
    caution: null,
  },
  {
    key: 'connector-magnified',
    label: 'Connector bent, worn or torn, seen under magnification',
    stage: 'before-opening',
    caution: null,
  },
  {
    key: 'self-test-as-received',
    label: 'Fault shows in the self-test, as received',
    stage: 'before-opening',
    caution:
      "Do not power or charge a unit with a swollen, leaking or hot battery. Mains units only behind a safety isolating supply, by a competent person; local codes, the maker's data and licensed practice come first.",
  },
  {
    key: 'liquid-signs-inside',
    label: 'Liquid signs inside',
    stage: 'after-opening',
    caution: 'Mains primary capacitors hold a charge: discharge and measure before touching.',
  },
  {
    key: 'previous-joints',
    label: 'A previous joint cracked, dull or lifted',
    stage: 'after-opening',
    caution: null,
  },
  {
    key: 'jumper-wires',
    label: 'A jumper wire broken, loose or pinched',
    stage: 'after-opening',
    caution: null,
  },
  {
    key: 'neighbouring-traces',
    label: 'A neighbouring trace damaged or lifted',
    stage: 'after-opening',
    caution: null,
  },
  {
    key: 'self-test-opened',
    label: 'Fault shows in the self-test, opened, with the readings taken',
    stage: 'after-opening',
    caution: 'Cover exposed mains parts, one hand away from the unit.',
  },
] as const satisfies readonly InspectionItem[];

export type InspectionKey = (typeof INSPECTION_ITEMS)[number]['key'];

export type InspectionEntry = { item: string; answer: InspectionAnswer; hasPhoto: boolean };

export type InspectionState = {
  /** Items without an answer. */
  unanswered: InspectionKey[];
  /** Items answered without a photo. */
  withoutPhoto: InspectionKey[];
  /** Items a person could not settle; a ruling that rests on one of them is not clear. */
  unclear: InspectionKey[];
  /** True when everything before opening has answer and photo: after opening it can never be looked at again. */
  mayOpen: boolean;
  isComplete: boolean;
};

/**
 * Where an inspection stands. Refuses an item that is not on the list, and an item answered twice.
 * Example: with no entries, every item is unanswered and the unit may not be opened.
 */
export function inspectionState(entries: readonly InspectionEntry[]): InspectionState {
  const byItem = new Map<string, InspectionEntry>();
  for (const entry of entries) {
    if (!INSPECTION_ITEMS.some(({ key }) => key === entry.item))
      throw new RangeError(`The inspection has no item ${entry.item}`);
    if (byItem.has(entry.item)) throw new RangeError(`The item ${entry.item} was answered twice`);
    byItem.set(entry.item, entry);
  }
  const keysWhere = (test: (entry: InspectionEntry | undefined) => boolean): InspectionKey[] =>
    INSPECTION_ITEMS.filter(({ key }) => test(byItem.get(key))).map(({ key }) => key);
  const unanswered = keysWhere((entry) => entry === undefined);
  const withoutPhoto = keysWhere((entry) => entry !== undefined && !entry.hasPhoto);
  const open = new Set<string>([...unanswered, ...withoutPhoto]);
  return {
    unanswered,
    withoutPhoto,
    unclear: keysWhere((entry) => entry?.answer === 'unclear'),
    mayOpen: INSPECTION_ITEMS.every(({ key, stage }) => stage !== 'before-opening' || !open.has(key)),
    isComplete: open.size === 0,
  };
}

/**
 * What a photo of the inspection shows, for the customer it is shown to with the ruling; undefined where an answer with a later
 * photo took its place.
 *
 * inspectedWords([{ item: 'seal-and-screws', answer: 'no', photoId: 'p' }], 'p') -> 'Seal broken, or screws moved or missing: no'
 */
export function inspectedWords(
  entries: readonly { item: string; answer: string; photoId: string | null }[],
  photoId: string,
): string | undefined {
  const entry = entries.find((each) => each.photoId === photoId);
  const item = INSPECTION_ITEMS.find(({ key }) => key === entry?.item);
  return entry && item && `${item.label}: ${entry.answer}`;
}
