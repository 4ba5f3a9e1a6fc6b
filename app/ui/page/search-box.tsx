type SearchBoxProps = {
  action: string;
  label: string;
  defaultValue?: string | undefined;
  hint?: string | undefined;
  placeholder?: string | undefined;
  mono?: boolean | undefined;
  small?: boolean | undefined;
  button?: string | undefined;
  id?: string | undefined;
};

/**
 * One box that sends what is typed or scanned by GET as `q`. `small` hides the label from sight, for a bar.
 *
 * ```tsx
 * <SearchBox action="/prices" label="Search the price list" defaultValue={q} />
 * ```
 */
export function SearchBox(props: SearchBoxProps) {
  const { action, label, defaultValue, hint, mono, small, button = 'Search', id = 'search-q' } = props;
  return (
    <search>
      <form action={action} method="get" className={small ? 'search search-small' : 'search'}>
        <label htmlFor={id} className={small ? 'sr-only' : 'field-label'}>
          {label}
        </label>
        {hint ? (
          <p className="field-hint" id={`${id}-hint`}>
            {hint}
          </p>
        ) : null}
        <span className="field-line">
          <input
            id={id}
            name="q"
            type="search"
            className={mono ? 'field-box field-mono' : 'field-box'}
            defaultValue={defaultValue}
            placeholder={props.placeholder}
            autoComplete="off"
            spellCheck={false}
            aria-describedby={hint ? `${id}-hint` : undefined}
          />
          <button type="submit" className="button button-second">
            {button}
          </button>
        </span>
      </form>
    </search>
  );
}
