'use client';
import './globals.css';
import { ErrorHelp } from './ui/frame/error-help';
import { LostPage } from './ui/frame/lost-page';

export default function GlobalError({ error, retry }: { error: unknown; retry: () => void }) {
  return (
    <html lang="en-GB">
      <body>
        <title>This page could not be made</title>
        <LostPage title="This page could not be made">
          <ErrorHelp error={error} retry={retry} />
        </LostPage>
      </body>
    </html>
  );
}
