/** '2026-03' as the axis of a chart shows it: 'Mar 26'. */
export function monthLabel(month: string, locale: string): string {
  const format = new Intl.DateTimeFormat(locale, { month: 'short', year: '2-digit', timeZone: 'UTC' });
  return format.format(new Date(`${month}-01T00:00:00Z`));
}
