/**
 * What a person typed, as a form hands it back when it is refused after it was parsed, so that nothing is lost. Names in
 * `arrays` are lists. Of files only their names come back, as a list, so that the field can say which to choose again;
 * passwords never do.
 *
 * typedValues(formData of serial=QF-1 and two files) -> { serial: 'QF-1', photos: ['one.jpg', 'two.jpg'] }
 */
export function typedValues(
  formData: FormData,
  arrays: readonly string[] = [],
): Record<string, string | string[]> {
  const values = new Map<string, string | string[]>();
  for (const name of new Set(formData.keys())) {
    // React adds its own hidden fields; "__proto__" can only come from a forged post.
    if (name.startsWith('$ACTION_') || name === '__proto__' || /password/i.test(name)) continue;
    values.set(name, handedBack(formData.getAll(name), arrays.includes(name)));
  }
  return Object.fromEntries(values);
}

/** What goes back to one field: its text, or a list where it is one, holds files or came more than once. */
export function handedBack(entries: readonly FormDataEntryValue[], isList: boolean): string | string[] {
  const typed = entries.map((entry) =>
    entry instanceof File ? chosenName(entry) : entry.replaceAll('\r\n', '\n'),
  );
  const isMany = isList || entries.length > 1 || entries.some((entry) => entry instanceof File);
  return isMany ? typed.filter(Boolean) : (typed[0] ?? '');
}

/** A field that nobody chose a file for is sent as an empty one, which the framework's reader names "undefined". */
function chosenName(file: File): string {
  return file.size === 0 ? '' : file.name;
}
