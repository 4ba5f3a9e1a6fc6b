import type { Shown } from '@/lib/shown-row';

/**
 * The row a form was drawn from, by the id bound to it and the mark hidden in it; null in a form for something new. One that
 * came without its mark is refused as older than the row.
 */
export function shownIn(id: string, formData: FormData): Shown;
export function shownIn(id: string | null, formData: FormData): Shown | null;
export function shownIn(id: string | null, formData: FormData): Shown | null {
  if (id === null) return null;
  const mark = formData.get('mark');
  return { id, mark: typeof mark === 'string' ? mark : '' };
}
