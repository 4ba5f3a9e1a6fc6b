// Annealed copper at 20 °C (IEC 60028, from memory): resistivity 1/58 ohm mm2/m, temperature coefficient 0.00393 per kelvin.
const CONDUCTIVITY = 58;
const PER_KELVIN = 0.00393;
const REFERENCE_CELSIUS = 20;

/** Usual enamelled wire for a lifted trace, in millimetres (common practice, no source). */
export const USUAL_JUMPER_MM = 0.1;

/**
 * Resistance of a round copper wire in ohms. Length and diameter in millimetres, temperature in °C, 20 when not given.
 * Refuses lengths and diameters that are not above zero. Example: 30 mm of 0.1 mm wire is 0.0659 ohm.
 */
export function wireResistance(o: { lengthMm: number; diameterMm: number; celsius?: number }): number {
  if (!(o.lengthMm > 0) || !(o.diameterMm > 0))
    throw new RangeError(`Not a wire: ${o.lengthMm} x ${o.diameterMm} mm`);
  const areaMm2 = (Math.PI * o.diameterMm ** 2) / 4;
  const atReference = o.lengthMm / 1000 / (CONDUCTIVITY * areaMm2);
  return atReference * temperatureFactor(o.celsius ?? REFERENCE_CELSIUS);
}

/** How much more a copper wire resists than at 20 °C: 1.216 at 75 °C. */
export function temperatureFactor(celsius: number): number {
  return 1 + PER_KELVIN * (celsius - REFERENCE_CELSIUS);
}

/** Diameter in millimetres of an American Wire Gauge size: 0.127 x 92^((36 - n) / 39), so that AWG 36 is 0.127. Refuses fractions. */
export function awgDiameter(gauge: number): number {
  if (!Number.isInteger(gauge)) throw new RangeError(`Not a wire gauge: ${gauge}`);
  return 0.127 * 92 ** ((36 - gauge) / 39);
}

/**
 * What a meter should show across a jumper, in ohms, so that a bad joint stands out: the wire alone, and the most to accept
 * with two sound joints of 10 milliohm each (common practice, no source). Example: 30 mm of 0.1 mm gives 0.066 and 0.086.
 */
export function jumperExpectation(o: { lengthMm: number; diameterMm: number; celsius?: number }): {
  wire: number;
  most: number;
} {
  const wire = wireResistance(o);
  return { wire, most: wire + 2 * JOINT_OHM };
}

const JOINT_OHM = 0.01;
