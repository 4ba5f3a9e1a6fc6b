import jsQR from 'jsqr';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { Docket } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { Qr } from '@/app/ui/docket/qr';
import { Stamps } from '@/app/ui/docket/stamps';
import type { StampState } from '@/lib/jobs/rules/run-of-stamps';

const STATES: StampState[] = ['done', 'now', 'waiting', 'skipped', 'stopped'];

describe('the run of stamps', () => {
  const html = renderToStaticMarkup(
    <Stamps steps={STATES.map((state) => ({ key: state, label: `Stage ${state}`, state, on: '1 Dec' }))} />,
  );
  const stamps = html.split('<li').slice(1);

  test('is an ordered list with one entry per stage', () => {
    expect(html.startsWith('<ol')).toBe(true);
    expect(stamps).toHaveLength(STATES.length);
  });

  test('marks the present stage, and only that one, as the current step', () => {
    const current = stamps.filter((stamp) => stamp.includes('aria-current="step"'));
    expect(current).toHaveLength(1);
    expect(current[0]).toContain('Stage now');
  });

  test('tells every state by a word and a shape of its own, not by colour alone (WCAG 2.2, 1.4.1)', () => {
    const words = stamps.map((stamp) => stamp.match(/<\/svg>([^<]+)</)?.[1]);
    const shapes = stamps.map((stamp) => stamp.match(/<svg.*<\/svg>/)?.[0]);
    expect(new Set(words).size).toBe(STATES.length);
    expect(new Set(shapes).size).toBe(STATES.length);
    expect([...words, ...shapes]).not.toContain(undefined);
  });
});

describe('the code on the stub', () => {
  test.each([
    'https://mend.example.org/j/J4K7QX29D',
    `https://mend.example.org/certificate/W8M2T0V6W?s=${'Aa9-_'.repeat(30)}`,
  ])('is read back by another library (jsQR): %s', (text) => {
    const html = renderToStaticMarkup(<Qr text={text} alt="QR code" />);
    expect(readSvg(html)).toBe(text);
  });

  test('keeps the quiet zone of four modules (ISO/IEC 18004, from memory)', () => {
    const html = renderToStaticMarkup(<Qr text="J4K7QX29D" alt="QR code" />);
    const corners = [...html.matchAll(/M(\d+) (\d+)h1v1h-1z/g)].map(([, x, y]) => [Number(x), Number(y)]);
    const size = Number(html.match(/viewBox="0 0 (\d+)/)?.[1]);
    const flat = corners.flat();
    expect(Math.min(...flat)).toBe(4);
    expect(Math.max(...flat)).toBe(size - 5);
  });
});

test('the code stands the right way round: its one fixed dark module is beside the lower left finder (ISO/IEC 18004, from memory)', () => {
  const turned = ['J4K7QX29D', 'Q8M2T0V6W', 'W0SB1I58O', 'C3F5H7K9M'].filter((text) => {
    const html = renderToStaticMarkup(<Qr text={text} alt="QR code" />);
    const size = Number(html.match(/viewBox="0 0 (\d+)/)?.[1]);
    return !html.includes(`M12 ${size - 12}h1v1h-1z`);
  });
  expect(turned).toEqual([]);
});

describe('the docket', () => {
  test('shows its number whole to a reader and breaks it only after a hyphen', () => {
    const html = renderToStaticMarkup(
      <Docket kind="Job" number="J-4K7Q-X29D" heading="Meridian Four">
        <p>body</p>
      </Docket>,
    );
    expect(html).toContain('J-<wbr/>4K7Q-<wbr/>X29D');
    expect(html.replaceAll(/<[^>]+>/g, '')).toContain('J-4K7Q-X29D');
  });

  test('is named by its heading', () => {
    const html = renderToStaticMarkup(
      <Docket kind="Claim" number="C-8M2T-0V6W" heading="Jack loose again" headingLevel={1}>
        <p>body</p>
      </Docket>,
    );
    const id = html.match(/aria-labelledby="([^"]+)"/)?.[1];
    expect(html).toContain(`<h1 id="${id}">Jack loose again</h1>`);
  });

  test('leaves out facts that are not known', () => {
    const html = renderToStaticMarkup(
      <Facts
        items={[
          { term: 'Serial', text: 'MR4-0581-S' },
          { term: 'Lot', text: undefined },
          { term: 'Note', text: '' },
          { term: 'Fee', text: false },
        ]}
      />,
    );
    expect(html).toContain('MR4-0581-S');
    expect(html).not.toMatch(/Lot|Note|Fee/);
    expect(renderToStaticMarkup(<Facts items={[]} />)).toBe('');
  });
});

// Paints the SVG's modules as pixels, eight to a module, the way a camera would see them on screen.
function readSvg(html: string): string | undefined {
  const size = Number(html.match(/viewBox="0 0 (\d+)/)?.[1]);
  const scale = 8;
  const side = size * scale;
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const [, x, y] of html.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
    for (let dy = 0; dy < scale; dy += 1) {
      const start = ((Number(y) * scale + dy) * side + Number(x) * scale) * 4;
      for (let at = start; at < start + scale * 4; at += 4) pixels.fill(0, at, at + 3);
    }
  }
  return jsQR(pixels, side, side)?.data;
}
