/** How a carrier turns a parcel's sides into weight. Metric in cm and kg; 'in-lb' in inches and pounds. */
export type VolumeRule = {
  unit: 'cm-kg' | 'in-lb';
  /** Cubic centimetres to the kilogram (5000, 6000) or cubic inches to the pound (139, 166). */
  divisor: number;
  /** Whether each side is first rounded to a whole centimetre or inch, halves up. */
  wholeSides: boolean;
  /** The chargeable weight is rounded up to a multiple of this, in grams or thousandths of a pound. */
  step: number;
};

/** Whole tenths of the rule's length unit (millimetres, or tenths of an inch), whole thousandths of its weight unit. */
export type ParcelMeasures = { sides: readonly [number, number, number]; weight: number };

/**
 * Weight by volume in thousandths of the rule's unit, not rounded: 300 x 450 x 650 mm at a divisor of 6000 is 14625 g
 * (IATA TACT: cubic centimetres / 6000). Refuses sides that are not whole numbers above zero.
 */
export function volumetricWeight(sides: ParcelMeasures['sides'], rule: VolumeRule): number {
  const [a, b, c] = sides;
  for (const side of sides) refuseMeasure(side);
  const round = (side: number) => (rule.wholeSides ? Math.floor((side + 5) / 10) * 10 : side);
  // Tenths cubed are thousandths, and so is the weight: the two thousands cancel out.
  return (round(a) * round(b) * round(c)) / rule.divisor;
}

/**
 * What the carrier charges for: the greater of the weight on the scale and the weight by volume, rounded up to the carrier's step.
 * Example: 14 kg at 300 x 450 x 650 mm, divisor 6000, step 500 g is 15000 g. Refuses measures that are not whole numbers above zero.
 */
export function chargeableWeight(parcel: ParcelMeasures, rule: VolumeRule): number {
  refuseMeasure(parcel.weight);
  const greater = Math.max(parcel.weight, volumetricWeight(parcel.sides, rule));
  return Math.ceil(greater / rule.step) * rule.step;
}

function refuseMeasure(value: number): void {
  if (!Number.isSafeInteger(value) || value < 1) throw new RangeError(`Not a measure of a parcel: ${value}`);
}
