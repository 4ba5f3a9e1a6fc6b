// Annealed copper at 20 °C (IEC 60028, from memory): resistivity 1/58 ohm mm2/m.
const CONDUCTIVITY = 58;

/** Usual enamelled wire for a lifted trace, in millimetres (common practice, no source). */
export const USUAL_JUMPER_MM = 0.1;

/**
 * Resistance of a round copper wire at 20 °C in ohms. Length and diameter in millimetres.
 * Refuses lengths and diameters that are not above zero. Example: 30 mm of 0.1 mm wire is 0.0659 ohm.
 */
export function wireResistance(o: { lengthMm: number; diameterMm: number }): number {
  if (!(o.lengthMm > 0) || !(o.diameterMm > 0))
    throw new RangeError(`Not a wire: ${o.lengthMm} x ${o.diameterMm} mm`);
  const areaMm2 = (Math.PI * o.diameterMm ** 2) / 4;
  return o.lengthMm / 1000 / (CONDUCTIVITY * areaMm2);
}

/**
 * What a meter should show across a jumper, in ohms, so that a bad joint stands out: the wire alone, and the most to accept
 * with two sound joints of 10 milliohm each (common practice, no source). Example: 30 mm of 0.1 mm gives 0.066 and 0.086.
 */
export function jumperExpectation(o: { lengthMm: number; diameterMm: number }): {
  wire: number;
  most: number;
} {
  const wire = wireResistance(o);
  return { wire, most: wire + 2 * JOINT_OHM };
}

const JOINT_OHM = 0.01;
