import { addDays, compareDays, type Day } from '@/lib/calendar/day';
import { addPeriod } from '@/lib/calendar/period';
import { isWorkingDay, nextWorkingDay } from '@/lib/calendar/working';
import { USUAL_TRANSIT } from '@/lib/parcels/rules/carriers';
import { startDay } from '@/lib/warranty/rules/start-day';
import { claimOn } from '../claim-course';
import { clock, type DemoDays } from '../days';
import type { Story } from './story';
import { pastJob } from './usual';

/** A job under 30 days of cover that ended a few days ago. */
export const SHORT_COVER = pastJob({
  key: 'orchardleigh-wet-minnow',
  ago: 78,
  repair: 'minnow/liquid',
  customer: 'tamsin-orchard',
  serial: 'MN 401 109',
  problem: 'Rain in the open bag. It plays notes by itself.',
  history: ['liquid'],
  finding: 'Water marks around the button matrix, nothing eaten through yet.',
  shots: [['corrosion', 'Around the buttons']],
  work: 'Taken apart, washed, dried, one hour under warm air.',
  minutes: 80,
  sentOn: (shop) => justLapsed(shop.days).sentOn,
});

/**
 * The day a unit with 30 days of cover from delivery went back, so that the last day to open a claim without asking lies
 * a few days before today, and the parcel of a claim opened two days later is here: tried day by day, because weekends
 * and holidays move three of these days.
 */
export function justLapsed(days: DemoDays): { sentOn: Day; claimedOn: Day; arrivedOn: Day } {
  for (let daysAgo = 36; daysAgo < 56; daysAgo += 1) {
    const sentOn = days.ago(daysAgo);
    const end = addPeriod(startDay('delivered', sentOn, days.calendar, USUAL_TRANSIT.home), 'P30D');
    const claimedOn = addDays(nextWorkingDay(end, days.calendar), 2);
    const arrivedOn = days.workedAfter(addDays(claimedOn, 1), 0);
    if (isWorkingDay(sentOn, days.calendar) && compareDays(arrivedOn, days.back(0)) <= 0)
      return { sentOn, claimedOn, arrivedOn };
  }
  throw new Error('no day fits the claim in its days of grace');
}

/** Claims that wait for somebody. */
export const OPEN: Story[] = [
  {
    key: 'duartelo-claim',
    tell: async (shop) =>
      claimOn(await shop.told('duartelo-train'), {
        symptom: 'Switches off by itself',
        details: 'Off after ten minutes, and then on again when I plug it in.',
        at: shop.ago(2, '21:48'),
      }),
  },
  {
    key: 'orchardleigh-late',
    tell: async (shop) => {
      const { claimedOn, arrivedOn } = justLapsed(shop.days);
      const claim = await claimOn(await shop.told('orchardleigh-wet-minnow'), {
        symptom: 'Keys or controls do things by themselves',
        details: 'It began the day after the certificate ended, of all days. Can you still have a look?',
        at: clock(claimedOn, '10:40'),
      });
      claim.on(arrivedOn, '10:33');
      await claim.arrive({ photos: [['unit', 'As it came']] });
    },
  },
  {
    key: 'tegeinglan-cell',
    tell: async (shop) => {
      const claim = await claimOn(await shop.told('tegeinglan-field-day'), {
        symptom: 'Runs down within an hour',
        details: 'Forty minutes in the field, and the level shown jumps.',
        at: shop.before(3, 6, '19:20'),
      });
      claim.on(shop.back(3), '10:55');
      await claim.arrive();
      claim.later(1, '13:10');
      await claim.move('assess');
      await claim.inspect({
        'self-test-as-received': ['yes', 'Empty after 41 minutes.', 'meter'],
        'self-test-opened': ['yes', 'Cell of lot NB-0588, the third of its kind.', 'battery'],
      });
      await claim.rule({
        cause: 'fitted-part',
        reasonText:
          'The battery we fitted comes from a lot that has failed before. We replace it at no cost to you.',
        lesson: 'Write to the other customers who carry a cell of lot NB-0588.',
      });
      claim.later(1, '11:05');
      await claim.move('start-bench');
      await claim.use('CELL-25', 'LS-8204');
      await claim.work('Cell of lot NB-0588 taken out, new one fitted, first charge under watch.', 30);
    },
  },
  {
    key: 'oosterveen-levered',
    tell: async (shop) => {
      const claim = await claimOn(await shop.told('oosterveen-shaken'), {
        symptom: 'Does not charge',
        details: 'From one day to the next. Nothing happened to it.',
        shots: [['bent-socket', 'The socket']],
        at: shop.before(3, 7, '09:10'),
      });
      claim.on(shop.back(3), '10:08');
      await claim.arrive({ photos: [['recorder', 'As it came']] });
      claim.later(1, '14:40');
      await claim.move('assess');
      await claim.inspect({
        'outside-damage': ['yes', 'Case pressed in above the socket, 2 mm deep.', 'recorder'],
        'connector-magnified': ['yes', 'Shell folded upwards, tongue split lengthwise.', 'bent-socket'],
        'previous-joints': [
          'no',
          'All four anchors of ours are whole and still hold the torn shell.',
          'socket',
        ],
      });
      await claim.rule({
        cause: 'damage-after-return',
        reasonText:
          'The socket is torn upwards and the case above it is pressed in, which takes a blow or a fall on the plug. Our joints are whole. The photos show it. This damage is not covered; we can replace the socket at the list price, or send your recorder back free of charge.',
      });
    },
  },
  {
    key: 'vogtland-contested',
    tell: async (shop) => {
      const claim = await claimOn(await shop.told('vogtland-stage'), {
        symptom: 'Does not charge',
        details: 'The light is on, the level does not rise. The socket holds well.',
        at: shop.before(6, 8, '11:11'),
      });
      claim.on(shop.back(6), '10:26');
      await claim.arrive();
      claim.later(1, '11:45');
      await claim.move('assess');
      await claim.inspect({
        'connector-magnified': ['no', 'Socket as we fitted it.', 'socket'],
        'previous-joints': ['no', 'All joints sound.', 'board'],
        'self-test-as-received': ['yes', 'Charge light on, current 0 mA.', 'meter'],
        'self-test-opened': ['yes', 'Charge controller gets 5.06 V and gives nothing. Cell good.', 'meter'],
      });
      await claim.rule({
        cause: 'separate-fault',
        reasonText:
          'The socket works and brings 5 volts to the board. The charge controller behind it has failed by itself. We did not touch that part, so the certificate does not cover it.',
      });
      claim.later(1, '09:25');
      await claim.secondLook();
      claim.on(shop.back(2), '20:32');
      await claim.contest(
        'It charged perfectly for six weeks after your repair and never before. Could the controller have been hurt by the heat when you changed the socket? Please look at that.',
      );
    },
  },
];
