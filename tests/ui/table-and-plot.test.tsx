import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { Pager } from '@/app/ui/page/pager';
import { Table } from '@/app/ui/page/table';
import { BarLoad } from '@/app/ui/plots/bar-load';

const repairs = [{ id: 'jack', name: 'Headphone socket replaced', days: '4 to 6 working days' }];

function prices(rows: typeof repairs) {
  return renderToStaticMarkup(
    <Table
      caption="Prices with tax"
      rows={rows}
      rowKey={(row) => row.id}
      empty="Nothing on the list yet."
      columns={[
        { key: 'name', head: 'Repair', kind: 'rowhead', cell: (row) => row.name },
        { key: 'days', head: 'Usual time', cell: (row) => row.days },
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

  test('draws heights in proportion to the hours', () => {
    const bars = [...html.matchAll(/height="([\d.]+)" class="plot-bar"/g)].map(([, height]) =>
      Number(height),
    );
    expect(bars).toHaveLength(3);
    expect((bars[0] ?? 0) / (bars[1] ?? 1)).toBeCloseTo(5.5 / 7, 10);
    expect(bars[2]).toBe(0);
  });

  test('stands every bar on the same line, below its own limit mark or at it', () => {
    const feet = [...html.matchAll(/ y="([\d.]+)" width="\d+" height="([\d.]+)" class="plot-bar"/g)];
    expect(feet).toHaveLength(3);
    expect(new Set(feet.map(([, top, height]) => Number(top) + Number(height))).size).toBe(1);
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
  const href = (page: number) => `/workshop/jobs?page=${page}`;

  test('draws nothing for a single page', () => {
    expect(renderToStaticMarkup(<Pager page={1} pages={1} href={href} />)).toBe('');
  });

  test('offers only pages that exist', () => {
    expect(renderToStaticMarkup(<Pager page={1} pages={2} href={href} />)).toMatch(/page=2/);
    expect(renderToStaticMarkup(<Pager page={1} pages={2} href={href} />)).not.toMatch(/page=0/);
    expect(renderToStaticMarkup(<Pager page={2} pages={2} href={href} />)).not.toMatch(/page=3/);
  });
});
