import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { Pager } from '@/app/ui/page/pager';
import { Table } from '@/app/ui/page/table';
import { BarLoad } from '@/app/ui/plots/bar-load';
import { WIDE } from '@/app/ui/plots/ticks';

const repairs = [{ id: 'jack', name: 'Headphone socket replaced', days: '4 to 6 working days' }];

function prices(rows: typeof repairs) {
  return renderToStaticMarkup(
    <Table
      caption="Prices with tax"
      rows={rows}
      rowKey={(row) => row.id}
      empty="Nothing on the list yet."
      columns={[
        { head: 'Repair', kind: 'rowhead', cell: (row) => row.name },
        { head: 'Usual time', cell: (row) => row.days },
      ]}
    />,
  );
}

describe('a table', () => {
  test('has a caption, column heads and row heads, and keeps its roles when laid out as blocks', () => {
    const html = prices(repairs);
    expect(html).toContain('<caption>Prices with tax</caption>');
    expect(html.match(/<th scope="col" role="columnheader"/g)).toHaveLength(2);
    expect(html).toContain('<th scope="row" role="rowheader">Headphone socket replaced</th>');
    expect(html).toMatch(/<td role="cell" data-head="Usual time"/);
  });

  test('says in a sentence that it is empty', () => {
    expect(prices([])).toBe('<p class="empty">Nothing on the list yet.</p>');
  });
});

describe('the plot of bench load', () => {
  const html = renderToStaticMarkup(
    <BarLoad
      caption="Bench load"
      days={[
        { key: '2026-12-03', label: 'Thu 3', hours: 5.5, capacity: 7 },
        { key: '2026-12-04', label: 'Fri 4', hours: 8.2, capacity: 7 },
        { key: '2026-12-05', label: 'Sat 5', hours: 0, capacity: 0 },
      ]}
    />,
  );

  const bars = [
    ...html.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)" [^>]*class="plot-bar"/g),
  ].map(([, x, width]) => ({ x: Number(x), width: Number(width) }));

  test('draws lengths in proportion to the hours', () => {
    expect(bars).toHaveLength(3);
    // Coordinates have one decimal.
    expect((bars[0]?.width ?? 0) / (bars[1]?.width ?? 1)).toBeCloseTo(5.5 / 7, 2);
    expect(bars[2]?.width).toBe(0);
  });

  test('begins every bar on the same line, and ends it before its own limit mark or at it', () => {
    expect(new Set(bars.map(({ x }) => x)).size).toBe(1);
    const limits = [...html.matchAll(/<path d="M([\d.]+) [\d.]+v\d+" class="plot-limit"/g)].map(([, x]) =>
      Number(x),
    );
    expect(limits).toHaveLength(3);
    bars.forEach(({ x, width }, day) => {
      expect(x + width).toBeLessThanOrEqual((limits[day] ?? 0) + 0.1);
    });
  });

  test('is drawn on paper as wide as the other plots, whose letters can be read on a phone', () => {
    expect(html).toContain(`viewBox="0 0 ${WIDE} `);
    expect(html).toContain('class="plot plot-fit"');
  });

  test('hatches and names the one day that is over, and no other', () => {
    expect(html.match(/class="plot-over"/g)).toHaveLength(1);
    expect(html.match(/class="plot-word"/g)).toHaveLength(1);
    expect(html).toContain('over by 1.2 h');
  });

  test('has the same figures in a table', () => {
    const cells = [...html.matchAll(/<td[^>]*><span>([^<]*)<\/span>/g)].map(([, text]) => text);
    expect(cells).toEqual(['5.5 h', '7 h', '1.5 h', '8.2 h', '7 h', 'over by 1.2 h', '0 h', '0 h', '0 h']);
  });
});

describe('the pager', () => {
  const href = (page: number) => `/workshop/jobs?page=${page}` as const;

  test('draws nothing for a single page', () => {
    expect(renderToStaticMarkup(<Pager page={1} pages={1} href={href} />)).toBe('');
  });

  test('offers only pages that exist', () => {
    expect(renderToStaticMarkup(<Pager page={1} pages={2} href={href} />)).toMatch(/page=2/);
    expect(renderToStaticMarkup(<Pager page={1} pages={2} href={href} />)).not.toMatch(/page=0/);
    expect(renderToStaticMarkup(<Pager page={2} pages={2} href={href} />)).not.toMatch(/page=3/);
  });
});
