/**
 * An e-mail address where there is little room: it breaks before its @, and only where that is not enough within a word.
 *
 * ```tsx
 * <MailAddress text="bench@quayandalder.example.org" />
 * ```
 */
export function MailAddress({ text }: { text: string }) {
  const at = text.lastIndexOf('@');
  if (at <= 0) return text;
  return (
    <>
      {text.slice(0, at)}
      <wbr />
      {text.slice(at)}
    </>
  );
}
