import { Notice } from '@/app/ui/page/notice';

/** Says that the last save was kept; nothing when the address does not carry one. */
export function SavedNote({ saved, children }: { saved: string | undefined; children?: string }) {
  if (saved === undefined) return null;
  return (
    <div className="mb-6">
      <Notice kind="good" role="status">
        <p>{children ?? 'Saved.'}</p>
      </Notice>
    </div>
  );
}
