/**
 * The house colours for mail programs, which read no style sheet of ours. They mirror app/globals.css, the one place
 * where a colour is decided; tests/mail/ink.test.ts compares the two.
 */
export const ink = {
  light: {
    ground: '#f3ecdf',
    sheet: '#fbf7ee',
    stub: '#ebe2d0',
    ink: '#172033',
    soft: '#4c5363',
    rule: '#cfc4ae',
    edge: '#7c7464',
    action: '#8a3a20',
    'on-action': '#fbf7ee',
  },
  dark: {
    ground: '#12161f',
    sheet: '#1a1f2a',
    stub: '#222835',
    ink: '#ece4d4',
    soft: '#b3ab9b',
    rule: '#3b4250',
    edge: '#8b8676',
    action: '#e2936c',
    'on-action': '#12161f',
  },
} as const;

export type Ink = keyof typeof ink.light;

// Mail programs load no fonts from us. A reader who has the house faces sees them; the others are drawn for legibility too.
export const faces = {
  sans: '"Atkinson Hyperlegible Next", Verdana, "DejaVu Sans", sans-serif',
  mono: '"Atkinson Hyperlegible Mono", Consolas, Menlo, "DejaVu Sans Mono", monospace',
};

const inks: readonly Ink[] = [
  'ground',
  'sheet',
  'stub',
  'ink',
  'soft',
  'rule',
  'edge',
  'action',
  'on-action',
];

/**
 * The only style sheet in a message: stacking on a phone, and the colours of the night. Everything else is inline,
 * because several mail programs drop style sheets. A class `on-sheet` paints the ground, `in-ink` the letters.
 */
export const styleSheet = [
  '@media (max-width:479px){',
  '.half{display:block!important;width:auto!important;border-right:0!important;padding:16px!important}',
  `.stub{border-bottom:4px dotted ${ink.light.edge}!important}`,
  '.page{padding:8px!important}',
  '}',
  '@media (prefers-color-scheme:dark){',
  ...inks.map(
    (name) =>
      `.on-${name}{background-color:${ink.dark[name]}!important}.in-${name}{color:${ink.dark[name]}!important}.by-${name}{border-color:${ink.dark[name]}!important}`,
  ),
  `.ground>table>tbody>tr>td{background-color:${ink.dark.ground}!important}`,
  '}',
].join('');
