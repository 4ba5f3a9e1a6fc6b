/** Outer size of a unit in whole millimetres; 0 where a side is not known. */
export type UnitSize = { lengthMm: number; widthMm: number; heightMm: number };

export const SIDES = ['lengthMm', 'widthMm', 'heightMm'] as const;

/** The side that is missing while another is known, the first of them; null for a whole size and for none at all. */
export function missingSide(size: UnitSize): (typeof SIDES)[number] | null {
  if (SIDES.every((side) => size[side] === 0)) return null;
  return SIDES.find((side) => size[side] === 0) ?? null;
}

/**
 * Size and weight as people read them: '158 × 74 × 31 mm, 310 g', '310 g', '158 × 74 × 31 mm'; from a kilogram on in
 * kilograms, '2.4 kg'. Null where nothing is known.
 */
export function sizeWords(unit: UnitSize & { weightGrams: number }): string | null {
  const hasSize = SIDES.every((side) => unit[side] > 0);
  const size = hasSize ? `${SIDES.map((side) => unit[side]).join(' × ')} mm` : null;
  const weight = unit.weightGrams > 0 ? weightWords(unit.weightGrams) : null;
  return [size, weight].filter((text) => text !== null).join(', ') || null;
}

function weightWords(grams: number): string {
  return grams < 1000 ? `${grams} g` : `${Math.round(grams / 10) / 100} kg`;
}
