import { pick } from '../chance';
import type { CustomerKey } from '../customers';
import { type CameBack, usualRow } from './usual-rows';

/** Whose units came in such months; most have sent more than one. */
const SENDERS: readonly CustomerKey[] = [
  'idris-vellacott',
  'bram-oosterveen',
  'aoife-tallon',
  'emeka-adunola',
  'rhys-penmarrow',
  'calum-strachur',
  'odin-marsk',
  'sol-whitcombe',
  'delphine-moreau',
  'matteo-rivalta',
  'siobhan-kerley',
  'kit-farrowdale',
];

const pickOf = <T>(name: string, from: readonly [T, ...T[]]): T =>
  from[pick(name, 0, from.length - 1)] ?? from[0];

function rowOf(key: string, ago: number) {
  const digits = String(pick(`${key}/serial`, 20_000, 89_999));
  return {
    key,
    ago,
    customer: SENDERS[pick(`${key}/sender`, 0, SENDERS.length - 1)] ?? 'idris-vellacott',
    serial: `M2-${digits}-${'ABCDEFGHJK'.charAt(pick(`${key}/letter`, 0, 9))}`,
    by: pickOf(`${key}/hand`, ['bench', 'bench', 'owner'] as const),
  };
}

const CRACKED: Omit<CameBack, 'ago'> = {
  symptom: 'The cable falls out or must be held',
  details: 'It was good for some weeks. Now the cable must be held again.',
  cause: 'workmanship',
  reasonText: 'An anchor we soldered has cracked. That was our work, so it is covered.',
  lesson: 'The anchors look good from above and still crack.',
  work: 'Anchors cleared and filled again, socket reseated.',
  minutes: 35,
};

function socket(ago: number, lot: string, cameBack?: number) {
  const key = `usual-socket-${ago}`;
  return usualRow({
    ...rowOf(key, ago),
    repair: 'meridian-two/usb-socket',
    problem: pickOf(`${key}/problem`, [
      'The plug wobbles and it stops charging.',
      'It charges only in one position.',
      'No charging light with any cable.',
    ]),
    finding: pickOf(`${key}/finding`, [
      'Front anchors of the socket free, contacts good.',
      'Socket shell spread, the plug has no grip.',
      'Supply contacts worn; the board is sound.',
    ]),
    work: 'Socket replaced, anchors soldered, charge current measured.',
    minutes: pick(`${key}/minutes`, 46, 62),
    part: ['USB-C-24', lot],
    ...(cameBack && { cameBack: { ...CRACKED, ago: cameBack } }),
  });
}

function cell(ago: number, lot: string, cameBack?: number) {
  const key = `usual-cell-${ago}`;
  return usualRow({
    ...rowOf(key, ago),
    repair: 'meridian-two/battery',
    battery: 'weak',
    problem: pickOf(`${key}/problem`, [
      'Empty after one hour.',
      'It switches itself off at half charge.',
      'It does not last through one recording.',
    ]),
    finding: pickOf(`${key}/finding`, [
      'Cell at a third of its size. Flat and dry.',
      'Cell drops below the cut-off under load.',
    ]),
    work: 'Cell replaced, first charge watched from start to end.',
    minutes: pick(`${key}/minutes`, 34, 42),
    part: ['CELL-25', lot],
    ...(cameBack && {
      cameBack: {
        ago: cameBack,
        symptom: 'Runs down within an hour',
        details: 'As bad as before you changed it.',
        cause: 'fitted-part',
        reasonText: 'The battery we fitted has lost most of its size. That is a bad cell, so it is covered.',
        lesson: 'Note the lot of every cell.',
        work: 'Cell replaced with one of another lot, full charge watched.',
        minutes: 36,
        part: ['CELL-25', 'LS-6850'],
      },
    }),
  });
}

/**
 * What the returns room reads its figures from: sockets before the check that was taught (their lot looks bad and is not)
 * and after it, cells of a lot that is bad and of one that is not.
 */
export const USUAL_MONTHS = [
  socket(416, 'HC-25118', 362),
  socket(403, 'HC-25118'),
  socket(393, 'HC-25118', 331),
  socket(371, 'HC-25118', 318),
  socket(358, 'HC-25118'),
  socket(347, 'HC-25118', 276),
  socket(336, 'HC-25118'),
  socket(325, 'HC-25118', 268),
  socket(289, 'HC-25118'),
  socket(268, 'HC-25118'),
  ...[211, 207, 199, 188, 181, 172, 166, 158, 146, 139, 131, 119].map((ago) => socket(ago, 'LS-7731')),
  ...[408, 386, 362, 341, 318, 297, 281, 262, 251, 214, 186, 161, 142, 122, 111].map((ago) =>
    cell(ago, 'LS-6850'),
  ),
  cell(194, 'NB-0588', 101),
  cell(172, 'NB-0588', 86),
];
