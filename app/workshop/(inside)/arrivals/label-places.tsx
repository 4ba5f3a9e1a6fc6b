type Props = { action: string; labelsPerSheet: number; mayRepeat: boolean };

/** Asks where on a sheet of labels the first one goes: an earlier print may have used the places before it. */
export function LabelPlaces({ action, labelsPerSheet, mayRepeat }: Props) {
  return (
    <form
      action={action}
      method="get"
      aria-label="Labels on a sheet"
      className="flex flex-wrap items-end gap-4"
    >
      <Count name="place" label="First free place on the sheet" most={labelsPerSheet} />
      {mayRepeat ? <Count name="count" label="Labels" most={labelsPerSheet} /> : null}
      <button type="submit" className="button button-second">
        Sheet of labels (PDF)
      </button>
    </form>
  );
}

function Count({ name, label, most }: { name: string; label: string; most: number }) {
  return (
    <label className="field-label">
      <span className="block">{`${label}, 1 to ${most}`}</span>
      <input
        className="field-box"
        name={name}
        type="number"
        inputMode="numeric"
        min={1}
        max={most}
        defaultValue={1}
      />
    </label>
  );
}
