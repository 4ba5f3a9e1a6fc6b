'use client';
import { ErrorHelp } from './ui/frame/error-help';
import { LostPage } from './ui/frame/lost-page';

export default function PageError({ error, retry }: { error: unknown; retry: () => void }) {
  return (
    <LostPage title="This page could not be made">
      <ErrorHelp error={error} retry={retry} />
    </LostPage>
  );
}
