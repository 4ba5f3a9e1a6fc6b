import { pick } from './chance';

/*
 * Pictures of the demonstration: plain drawn shapes that look like a workshop's photos from across a room. No text is
 * drawn, because the fonts of the machine would decide how it looks.
 */

const WIDTH = 960;
const HEIGHT = 720;

const CASES = ['#3d4a52', '#6b5d4f', '#8a3b2a', '#2f4a3e', '#50506b'] as const;
const BENCH = ['#b9ad98', '#a9b0a4', '#c0b7a6'] as const;

const rect = (x: number, y: number, width: number, height: number, fill: string, more = '') =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}" ${more}/>`;
const disc = (x: number, y: number, r: number, fill: string, more = '') =>
  `<circle cx="${x}" cy="${y}" r="${r}" fill="${fill}" ${more}/>`;
const line = (points: string, stroke: string, width: number) =>
  `<polyline points="${points}" fill="none" stroke="${stroke}" stroke-width="${width}" stroke-linejoin="round" stroke-linecap="round"/>`;
const rows = (n: number, draw: (i: number) => string) =>
  Array.from({ length: n }, (_, i) => draw(i)).join('');

type Draw = (name: string) => string;

const colour = (name: string) => CASES[pick(`${name}/case`, 0, CASES.length - 1)] ?? CASES[0];

const unit: Draw = (name) => {
  const knobs = pick(`${name}/knobs`, 2, 5);
  return [
    rect(180, 150, 600, 420, colour(name), 'rx="26"'),
    rect(230, 200, 250, 130, '#1f2a26'),
    rect(244, 214, 222, 102, '#7f9b82'),
    rows(
      knobs,
      (i) =>
        disc(550 + i * 50, 250, 20, '#d8d3c7') + line(`${550 + i * 50},250 ${550 + i * 50},234`, '#333', 4),
    ),
    rows(8, (i) => rect(236 + i * 66, 400, 50, 50, i % 3 === 0 ? '#c8763c' : '#c9c4b8', 'rx="5"')),
    rows(8, (i) => rect(236 + i * 66, 470, 50, 50, '#aaa59a', 'rx="5"')),
    line(
      `${pick(`${name}/scratch`, 220, 500)},170 ${pick(`${name}/scratch-end`, 520, 740)},186`,
      '#e8e4da',
      2,
    ),
  ].join('');
};

const label: Draw = (name) =>
  [
    rect(140, 120, 680, 480, colour(name), 'rx="16"'),
    disc(190, 170, 14, '#222'),
    disc(770, 170, 14, '#222'),
    disc(190, 550, 14, '#222'),
    disc(770, 550, 14, '#222'),
    rect(260, 240, 440, 230, '#e9e6dc'),
    rows(28, (i) => rect(290 + i * 13.5, 270, pick(`${name}/bar${i}`, 2, 9), 90, '#1b1b1b')),
    rows(3, (i) => rect(290, 385 + i * 26, pick(`${name}/line${i}`, 160, 370), 10, '#555')),
    rect(560, 370, 120, 80, '#cfc9ba', 'opacity="0.85"'),
  ].join('');

const parcel: Draw = (name) =>
  [
    rect(170, 170, 620, 420, '#b08a5a'),
    `<polygon points="170,170 260,90 880,90 790,170" fill="#c49d6b"/>`,
    `<polygon points="790,170 880,90 880,500 790,590" fill="#94724a"/>`,
    rect(440, 170, 70, 420, '#d9c9a3', 'opacity="0.8"'),
    rect(230, 260, 180, 120, '#f1efe8'),
    rows(4, (i) => rect(246, 278 + i * 22, pick(`${name}/address${i}`, 70, 150), 8, '#666')),
    line(`640,${pick(`${name}/dent`, 480, 560)} 690,520 740,560`, '#7d6039', 5),
  ].join('');

const board = (name: string) =>
  [
    rect(90, 90, 780, 540, '#1f5a3c', 'rx="8"'),
    rows(9, (i) =>
      line(
        `${110},${150 + i * 52} ${320 + ((i * 37) % 90)},${150 + i * 52} ${420 + ((i * 53) % 80)},${190 + i * 44} 850,${190 + i * 44}`,
        '#2f7d55',
        5,
      ),
    ),
    rect(360, 250, 180, 180, '#1a1a1a', 'rx="6"'),
    rows(11, (i) => rect(368 + i * 15, 236, 8, 14, '#c9c9c4') + rect(368 + i * 15, 430, 8, 14, '#c9c9c4')),
    rows(14, (i) =>
      rect(130 + ((i * 97) % 700), 130 + ((i * 61) % 460), 26, 14, i % 4 === 0 ? '#b08d57' : '#3a3a3a'),
    ),
    disc(130, 130, 16, '#d6c48a'),
    disc(830, 590, 16, '#d6c48a'),
    rect(680, pick(`${name}/part`, 140, 460), 90, 70, '#8c8f93', 'rx="4"'),
  ].join('');

const socket = (name: string) =>
  [
    rect(0, 430, WIDTH, 290, '#1f5a3c'),
    rect(250, 210, 460, 260, '#b6b9bd', 'rx="40"'),
    rect(300, 260, 360, 150, '#222', 'rx="60"'),
    rect(350, 315, 260, 40, '#4a4a4a', 'rx="8"'),
    rows(12, (i) => rect(364 + i * 20, 322, 9, 26, '#cda84e')),
    rect(262, 470, 60, 60, '#cfcfc9'),
    rect(638, 470, 60, 60, '#cfcfc9'),
    rows(12, (i) => rect(350 + i * 22, 470, 10, 80, '#c8a24a')),
    disc(pick(`${name}/glint`, 300, 640), 240, 8, '#f4f4f0'),
  ].join('');

const SCENES = {
  unit,
  label,
  parcel,
  board,
  socket,
  'bent-socket': (name) =>
    socket(name) +
    line('300,300 380,332 470,318 560,345 660,330', '#e0b040', 7) +
    line('262,470 230,540 250,600', '#8f8f89', 12),
  'lifted-pads': (name) =>
    board(name) +
    rows(4, (i) =>
      rect(
        590 + i * 34,
        470,
        18,
        46,
        i === 1 || i === 2 ? '#d98c4a' : '#c9c9c4',
        `transform="rotate(${i === 1 || i === 2 ? 18 : 0} ${599 + i * 34} 493)"`,
      ),
    ) +
    line('624,516 640,560 700,580', '#d98c4a', 4),
  'wire-bridge': (name) =>
    board(name) +
    line('600,480 640,430 720,400 760,320', '#e3a857', 5) +
    disc(600, 480, 11, '#dfe2e4') +
    disc(760, 320, 11, '#dfe2e4'),
  'cracked-joint': () =>
    [
      rect(0, 0, WIDTH, HEIGHT, '#1f5a3c'),
      disc(480, 360, 230, '#c7a04c'),
      disc(480, 360, 190, '#9fa3a6'),
      disc(480, 360, 90, '#6d7174'),
      line('300,300 360,330 380,390 450,440 560,450 640,410', '#2a2c2d', 7),
      disc(410, 270, 26, '#e6e9ea', 'opacity="0.7"'),
    ].join(''),
  corrosion: (name) =>
    board(name) +
    rows(9, (i) =>
      disc(
        390 + ((i * 71) % 190),
        260 + ((i * 47) % 170),
        12 + ((i * 13) % 22),
        i % 2 === 0 ? '#9fc7b4' : '#dfe9d8',
        'opacity="0.75"',
      ),
    ),
  battery: (name) =>
    [
      rect(120, 130, 720, 460, '#3b4147', 'rx="20"'),
      rect(220, 210, 440, 300, '#9aa3ab', 'rx="14"'),
      rect(220, 210, 440, 54, '#c3892f'),
      line('660,250 730,250 740,330 790,340', '#b23a2c', 9),
      line('660,280 710,300 715,380 790,390', '#222', 9),
      rect(786, 325, 44, 84, '#efece2', 'rx="4"'),
      rect(260, 300, pick(`${name}/print`, 180, 320), 12, '#5c646b'),
      rect(260, 330, 150, 12, '#5c646b'),
    ].join(''),
  keys: (name) =>
    [
      rect(60, 180, 840, 380, '#2b2b2b', 'rx="10"'),
      rows(10, (i) => rect(80 + i * 81, 240, 75, 300, '#efece4', 'rx="4"')),
      rows(10, (i) =>
        i % 7 === 2 || i % 7 === 6 ? '' : rect(136 + i * 81, 240, 44, 180, '#191919', 'rx="3"'),
      ),
      rect(80 + pick(`${name}/key`, 1, 8) * 81, 252, 75, 300, '#d8d2c2', 'rx="4"'),
    ].join(''),
  meter: (name) => {
    const swing = pick(`${name}/needle`, -38, 38);
    return [
      rect(240, 80, 480, 560, '#c58a2d', 'rx="34"'),
      rect(280, 120, 400, 230, '#ece7d8', 'rx="8"'),
      `<path d="M 320 300 A 190 190 0 0 1 640 300" fill="none" stroke="#20261c" stroke-width="5"/>`,
      rows(
        9,
        (i) => `<g transform="rotate(${-48 + i * 12} 480 400)">${line('480,195 480,225', '#20261c', 5)}</g>`,
      ),
      `<g transform="rotate(${swing} 480 400)">${line('480,345 480,200', '#a11f1f', 6)}</g>`,
      disc(480, 480, 84, '#2a2a2a'),
      line('480,480 524,418', '#e9e4d6', 12),
      disc(330, 590, 16, '#a11f1f'),
      disc(630, 590, 16, '#111'),
    ].join('');
  },
  recorder: (name) =>
    [
      disc(400, 96, 42, '#8c8f93'),
      disc(560, 96, 42, '#8c8f93'),
      rows(5, (i) => line(`${372 + i * 14},70 ${372 + i * 14},122`, '#5c6064', 3)),
      rows(5, (i) => line(`${532 + i * 14},70 ${532 + i * 14},122`, '#5c6064', 3)),
      rect(320, 120, 320, 520, colour(name), 'rx="24"'),
      rect(356, 160, 248, 150, '#1f2a26'),
      rect(368, 172, 224, 126, '#7f9b82'),
      rows(3, (i) =>
        line(`384,${200 + i * 34} ${pick(`${name}/level${i}`, 430, 580)},${200 + i * 34}`, '#24402f', 12),
      ),
      disc(480, 420, 58, '#d8d3c7'),
      disc(480, 420, 30, '#a11f1f'),
      rows(4, (i) => rect(360 + i * 64, 520, 48, 34, '#c9c4b8', 'rx="5"')),
      line(
        `${pick(`${name}/scratch`, 340, 420)},600 ${pick(`${name}/scratch-end`, 480, 610)},588`,
        '#e8e4da',
        2,
      ),
    ].join(''),
  pedal: (name) =>
    [
      rect(300, 90, 360, 540, colour(name), 'rx="18"'),
      rows(
        3,
        (i) =>
          disc(380 + i * 100, 170, 34, '#1d1d1d') +
          line(`${380 + i * 100},170 ${380 + i * 100},142`, '#eee', 5),
      ),
      disc(480, 300, 13, pick(`${name}/light`, 0, 1) ? '#c0392b' : '#5a2a25'),
      disc(480, 500, 66, '#8c8f93'),
      disc(480, 500, 48, '#c4c7ca'),
      rect(258, 240, 42, 60, '#3a3a3a'),
      rect(660, 240, 42, 60, '#3a3a3a'),
      rect(450, 58, 60, 32, '#3a3a3a'),
    ].join(''),
} satisfies Record<string, Draw>;

export type Scene = keyof typeof SCENES;

/** An SVG of a scene; the name shifts colours and details a little, so that two photos of a kind differ. */
export function drawScene(scene: Scene, name: string): string {
  const draw: Draw = SCENES[scene];
  const bench = BENCH[pick(`${name}/bench`, 0, BENCH.length - 1)] ?? BENCH[0];
  const tilt = pick(`${name}/tilt`, -4, 4);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}">
<rect width="${WIDTH}" height="${HEIGHT}" fill="${bench}"/>
<g transform="rotate(${tilt} ${WIDTH / 2} ${HEIGHT / 2})">${draw(name)}</g></svg>`;
}
