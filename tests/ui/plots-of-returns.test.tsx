import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { IntervalPlot } from '@/app/ui/plots/interval-plot';
import { ShareChart } from '@/app/ui/plots/share-chart';
import { SurvivalPlot } from '@/app/ui/plots/survival-plot';
import { pChart } from '@/lib/returns/rules/p-chart';

const cells = (html: string) => [...html.matchAll(/<td[^>]*><span>([^<]*)<\/span>/g)].map(([, text]) => text);
const numbers = (text: string | undefined) => [...(text ?? '').matchAll(/[\d.]+/g)].map(Number);

describe('the plot of survival', () => {
  const counts = [
    { days: 10, returned: 1, left: 0 },
    { days: 40, returned: 1, left: 3 },
    { days: 90, returned: 0, left: 5 },
  ];
  const html = renderToStaticMarkup(
    <SurvivalPlot caption="Returned by day" counts={counts} until={90} locale="en-GB" />,
  );

  test('is a named picture, with how many are still watched under each mark', () => {
    expect(html).toMatch(/role="img" aria-label="Returned by day\./);
    const texts = [...html.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text);
    expect(texts).toEqual(expect.arrayContaining(['0', '30', '60', '90', '10', '9', '5']));
  });

  test('has the same figures in a table, with their intervals', () => {
    // Wilson 1/10 is 1.79 % to 40.42 %; 2/10 is 5.67 % to 50.98 % (scipy 1.17.1): nobody left before both had come back.
    expect(cells(html)).toEqual([
      ...['10% (1.8% to 40%)', '9'],
      ...['20% (5.7% to 51%)', '5'],
      ...['20% (5.7% to 51%)', '5'],
    ]);
  });

  test('rises by steps and never falls, to the share of the last day', () => {
    const heights = numbers(/d="([^"]*)" class="plot-line"/.exec(html)?.[1]).filter(
      (_, place) => place % 2 === 1,
    );
    expect(heights).toEqual([...heights].sort((a, b) => b - a));
    // The first mark above nought, so that a fifth stands where the axis says it does.
    const [foot, ...marks] = [...html.matchAll(/d="M52 ([\d.]+)H428" class="plot-grid"/g)].map(([, y]) =>
      Number(y),
    );
    const labels = [...html.matchAll(/text-anchor="end">([\d]+)%/g)].map(([, share]) => Number(share));
    const perPercent = ((foot ?? 0) - (marks[0] ?? 0)) / ((labels[1] ?? 0) - (labels[0] ?? 0));
    expect((foot ?? 0) - (heights.at(-1) ?? 0)).toBeCloseTo(20 * perPercent, 0);
  });

  test('ends where nobody was watched longer', () => {
    const short = renderToStaticMarkup(
      <SurvivalPlot caption="x" counts={counts} until={360} locale="en-GB" />,
    );
    expect(cells(short)).toHaveLength(0);
    expect(short).toContain('Nobody has been watched for 120 days yet.');
    expect(
      renderToStaticMarkup(<SurvivalPlot caption="x" counts={[]} until={90} locale="en-GB" />),
    ).toContain('No unit has been out for a day yet.');
  });
});

describe('the plot of intervals', () => {
  const html = renderToStaticMarkup(
    <IntervalPlot
      caption="Returned by lot"
      head="Lot"
      centre={{ returned: 11, units: 32 }}
      locale="en-GB"
      rows={[
        { key: 'a', label: 'Lot 0419', count: { returned: 9, units: 22 }, mark: 'strong evidence' },
        { key: 'b', label: 'Lot 0512', count: { returned: 2, units: 7 } },
        { key: 'c', label: 'Lot 0533', count: { returned: 0, units: 0 } },
      ]}
    />,
  );

  test('draws a whisker from end to end of the interval, and nothing for a lot that was never sent', () => {
    const whiskers = [...html.matchAll(/d="M([\d.]+) [\d.]+H([\d.]+)M[^"]*" class="plot-whisker"/g)];
    expect(whiskers).toHaveLength(2);
    const dot = Number(/<circle cx="([\d.]+)"/.exec(html)?.[1]);
    const [low, high] = [Number(whiskers[1]?.[1]), Number(whiskers[1]?.[2])];
    // 2 of 7: 8.2 % to 64.1 %, so the dot stands at (28.6 - 8.2) / (64.1 - 8.2) of the whisker
    expect((dot - low) / (high - low)).toBeCloseTo((2 / 7 - 0.0822) / (0.6411 - 0.0822), 2);
  });

  test('tells the marked lot by a square and a word, not by its colour alone', () => {
    expect(html.match(/class="plot-flag"/g)).toHaveLength(1);
    expect(html).toContain('9 of 22, strong evidence');
  });

  test('has every lot in its table, also the one that was never sent', () => {
    expect(cells(html)).toEqual([
      '9 of 22',
      '23% to 61%',
      'strong evidence',
      '2 of 7',
      '8.2% to 64%',
      'none yet',
      '0 of 0',
      'none sent yet',
      'none yet',
    ]);
  });
});

describe('the chart of months', () => {
  const months = Array.from({ length: 12 }, (_, place) => ({
    month: `2026-${String(place + 1).padStart(2, '0')}`,
    units: 200,
    returned: 10,
  }));
  const chart = pChart([
    ...months,
    { month: '2027-01', units: 200, returned: 40 },
    { month: '2027-02', units: 3, returned: 0 },
    { month: '2027-03', units: 0, returned: 0 },
  ]);
  if (!chart) throw new Error('no chart');
  const html = renderToStaticMarkup(
    <ShareChart
      caption="Returned by month"
      chart={chart}
      monthLabel={(month) => `m ${month}`}
      locale="en-GB"
    />,
  );

  test('names the month that is out, rings the small one and draws none for an empty one', () => {
    expect(html.match(/class="plot-flag"/g)).toHaveLength(1);
    expect(html.match(/class="plot-ring"/g)).toHaveLength(1);
    expect(html.match(/class="plot-dot"/g)).toHaveLength(12);
    expect(html.match(/class="plot-whisker"/g)).toHaveLength(14);
  });

  test('labels no more than six months, the last always', () => {
    const labels = [...html.matchAll(/<text[^>]*>(m [^<]*)<\/text>/g)].map(([, text]) => text);
    expect(labels.length).toBeLessThanOrEqual(6);
    expect(labels.at(-1)).toBe('m 2027-03');
  });

  test('says of each month in the table where it stands', () => {
    const told = cells(html);
    expect(told.slice(-9)).toEqual([
      '40 of 200',
      '15% to 26%',
      'above the limits',
      '0 of 3',
      '0% to 56%',
      'few, within chance',
      '0 of 0',
      'none',
      'nothing counted',
    ]);
  });
});
