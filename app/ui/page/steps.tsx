type StepsProps = {
  at: number;
  names: readonly string[];
};

/**
 * Where the person is in a booking; `at` counts from 1.
 *
 * ```tsx
 * <Steps at={2} names={['The unit', 'What is wrong', 'What you send', 'Where to return it', 'Check and book']} />
 * ```
 */
export function Steps({ at, names }: StepsProps) {
  const name = names[at - 1] ?? '';
  return (
    <div className="steps">
      <p>
        Booking: <strong>{`Step ${at} of ${names.length}`}</strong> · {name}
      </p>
      <span className="steps-line" aria-hidden="true">
        {names.map((step, index) => (
          <i key={step} data-state={index + 1 < at ? 'done' : index + 1 === at ? 'now' : 'waiting'} />
        ))}
      </span>
    </div>
  );
}
