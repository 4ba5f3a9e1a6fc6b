import type { DrawnMail } from '@/lib/mail/draw';

/** A message in both its forms: as a mail program draws it, and as plain text. */
export function DrawnMessage({ drawn }: { drawn: DrawnMail }) {
  return (
    <>
      <section aria-labelledby="as-drawn" className="mt-12">
        <h2 id="as-drawn" className="mb-3">
          As a mail program shows it
        </h2>
        <iframe
          title={`The message “${drawn.subject}”`}
          // No script, no forms, no access to this page; its links open in a tab of their own.
          sandbox="allow-popups allow-popups-to-escape-sandbox"
          srcDoc={drawn.html}
          className="h-[48rem] w-full max-w-[42rem] border border-edge"
        />
      </section>
      <section aria-labelledby="as-text" className="mt-12">
        <h2 id="as-text" className="mb-3">
          As plain text
        </h2>
        <pre className="max-w-[42rem] border border-edge bg-sheet p-4 font-sans whitespace-pre-wrap [overflow-wrap:anywhere]">
          {drawn.text}
        </pre>
      </section>
    </>
  );
}
