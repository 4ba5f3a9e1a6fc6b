/**
 * What a person typed, as a form hands it back when it is refused after it was parsed, so that nothing is lost. Names in
 * `arrays` are lists; files cannot be handed back, and passwords must not be.
 *
 * typedValues(formData of serial=QF-1) -> { serial: 'QF-1' }
 */
export function typedValues(
  formData: FormData,
  arrays: readonly string[] = [],
): Record<string, string | string[]> {
  const values = new Map<string, string | string[]>();
  for (const name of new Set(formData.keys())) {
    // React adds its own hidden fields; "__proto__" can only come from a forged post.
    if (name.startsWith('$ACTION_') || name === '__proto__' || /password/i.test(name)) continue;
    const texts = formData
      .getAll(name)
      .filter((entry) => typeof entry === 'string')
      .map((entry) => entry.replaceAll('\r\n', '\n'));
    values.set(name, arrays.includes(name) ? texts : (texts[0] ?? ''));
  }
  return Object.fromEntries(values);
}
