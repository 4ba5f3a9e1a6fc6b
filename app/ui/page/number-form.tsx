import { ErrorSummary } from '../forms/error-summary';
import { ScanButton } from '../forms/scan-button';
import { Mark } from '../marks';

type Props = {
  action: string;
  name: string;
  label: string;
  hint: string;
  value: string;
  problem: string | null;
  submit: string;
  /**
   * only where the field is the page's one purpose, as for a scanner; it keeps the focus after a problem too, which is read
   * out with it, so that the next scan lands in it
   */
  autoFocus?: boolean | undefined;
  /** offers the device's camera to read the number from a code, and sends what was read */
  scan?: boolean | undefined;
  /** what goes along unseen, by its name in the address */
  hidden?: Readonly<Record<string, string>> | undefined;
};

/** With the field's name its id, as the summary makes it up (fieldId, which only runs in a client part). */
const PREFIX = 'number';

/**
 * One field for a number, sent with GET so that it needs no script and can be bookmarked; the problem stands at the field, and
 * in the summary above it that takes the focus. The page puts "Error: " before its title, with errorTitle.
 *
 * ```tsx
 * <NumberForm action="/track" name="number" label="Job number" hint="It looks like J-4K7Q-X290." value={typed}
 *   problem={problem} submit="Show the stage" />
 * ```
 */
export function NumberForm({
  action,
  name,
  label,
  hint,
  value,
  problem,
  submit,
  autoFocus,
  scan,
  hidden = {},
}: Props) {
  const id = `${PREFIX}-${name}`;
  return (
    <form action={action} method="get" className="form" noValidate>
      {Object.entries(hidden).map(([key, known]) => (
        <input key={key} type="hidden" name={key} value={known} />
      ))}
      {problem && !autoFocus ? (
        <ErrorSummary state={{ errors: { [name]: [problem] } }} prefix={PREFIX} />
      ) : null}
      <div className={problem ? 'field field-wrong' : 'field'}>
        <label className="field-label" htmlFor={id}>
          {label}
        </label>
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
        {problem ? (
          <p className="field-problem" id={`${id}-problem`}>
            <Mark shape="stop" />
            <span>{problem}</span>
          </p>
        ) : null}
        <span className="field-line field-half">
          <input
            id={id}
            name={name}
            className="field-box field-mono"
            defaultValue={value}
            autoComplete="off"
            autoCapitalize="characters"
            spellCheck={false}
            maxLength={4000}
            // biome-ignore lint/a11y/noAutofocus: only for a scanner field that is the page's one purpose
            autoFocus={autoFocus}
            aria-invalid={problem ? true : undefined}
            aria-describedby={problem ? `${id}-hint ${id}-problem` : `${id}-hint`}
          />
        </span>
        {scan ? <ScanButton fieldId={id} what={label} sends /> : null}
      </div>
      <div className="submit">
        <button type="submit" className="button button-main">
          {submit}
        </button>
      </div>
    </form>
  );
}
