import type { Story } from './story';
import { payAndSendBack, repairAsUsual } from './usual';

/** Bookings whose parcels are on their way, were called off, or came back unrepaired. */
export const EXPECTED: Story[] = [
  {
    key: 'booked-just-now',
    tell: (shop, key) =>
      shop.book(key, {
        repair: 'spar/headphone-socket',
        customer: 'delphine-moreau',
        serial: 'HS26D207H',
        problem: 'The left side comes and goes. It started after the plug was stepped on.',
        sent: ['Leather sleeve'],
        at: shop.minutesAgo(25),
      }),
  },
  {
    key: 'booked-last-night',
    tell: (shop, key) =>
      shop.book(key, {
        repair: 'keel-49/key-contacts',
        customer: 'odin-marsk',
        serial: 'KL49-03310',
        problem: 'The lowest octave is silent and two keys are always loud.',
        sent: ['USB cable'],
        at: shop.ago(1, '23:12'),
      }),
  },
  {
    key: 'booked-on-its-way',
    tell: (shop, key) =>
      shop.book(key, {
        repair: 'kittiwake/power-socket',
        customer: 'siobhan-kerley',
        serial: 'OK-2447',
        problem: 'Cuts out when I tread beside it.',
        sent: ['Wall adapter'],
        parcel: 'CE 47312482 9 IE',
        at: shop.ago(4, '18:30'),
      }),
  },
  {
    key: 'booked-not-come',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'slipway-16/clock-cell',
        customer: 'calum-strachur',
        serial: '2610063543',
        problem: 'It forgets the date and my settings every night.',
        sent: ['Wall adapter'],
        at: shop.before(4, 12, '09:02'),
      });
      job.on(shop.back(4), '11:30');
      await job.say(
        'Your parcel has not reached us yet. Is it on its way, or shall we keep your place?',
        'front',
      );
      job.on(shop.back(2), '20:44');
      await job.say('Sorry, I was at sea. I post it on Friday.');
    },
  },
  {
    key: 'cancelled-bought-new',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'minnow/headphone-socket',
        customer: 'harun-celik',
        serial: 'MN 401 550',
        problem: 'One side is silent.',
        at: shop.ago(27, '16:20'),
      });
      job.on(shop.days.ago(26), '08:10');
      await job.move('cancel', { by: 'customer', note: 'A friend gave me hers.' });
    },
  },
  {
    key: 'cancelled-swollen',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'gull/battery',
        customer: 'kit-farrowdale',
        serial: 'G-118 902',
        problem: 'It does not hold a charge any more.',
        battery: 'weak',
        at: shop.before(6, 4, '19:55'),
      });
      job.on(shop.back(6), '09:40');
      await job.say('I was packing it and saw that the back is bent outwards. Is that bad?');
      await job.say(
        'Please do not post it, do not charge it, and keep it away from anything that burns. A bent back can mean a swollen cell. Your recycling centre takes it as hazardous waste; ask them before you bring it.',
        'bench',
      );
      await job.move('cancel', {
        by: 'front',
        note: 'The battery may be swollen, so it must not be posted.',
      });
    },
  },
  {
    key: 'declined-yesterday',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'slipway-8/liquid',
        customer: 'emeka-adunola',
        serial: '2609022310',
        problem: 'Cola over the pads at a wedding. The battery is out.',
        history: ['liquid'],
        battery: 'none',
        sent: ['Lid'],
        at: shop.before(7, 3, '11:48'),
      });
      job.on(shop.back(7), '10:25');
      await job.arrive({ photos: [['unit', 'Sticky all over the left half']] });
      job.later(1, '13:20');
      await job.move('assess');
      await job.find(
        'Sugar has crept under the main processor. Three pads of the pad matrix are eaten away.',
        [
          ['corrosion', 'Beside the main processor'],
          ['lifted-pads', 'Pad matrix, row 3'],
        ],
      );
      await job.askApproval({
        lines: [
          ['labour', 'Cleaned after liquid', 10_200],
          ['labour', 'Pad matrix rebuilt with 0.1 mm wire', 6400],
          ['part', 'Pad mat with sensor sheet', 3300],
        ],
        reason: 'The drink has eaten part of the pad matrix. Cleaning alone will not bring the pads back.',
        onYes: 'We clean it, rebuild the pad matrix and fit a new pad mat.',
        onNo: 'We send it back as it is for the return fee.',
      });
      job.on(shop.back(0), '07:35');
      await job.decide('declined');
      await job.say('Thank you for looking. For that money I buy a used one.');
    },
  },
  {
    key: 'declined-went-home',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'jetty-61/display',
        customer: 'matteo-rivalta',
        serial: 'HJ 250 0902',
        problem: 'The display shows half letters.',
        at: shop.ago(139, '15:30'),
      });
      job.later(4, '10:45');
      await job.arrive();
      job.later(1, '11:30');
      await job.move('assess', { by: 'owner' });
      await job.find(
        'Display good. The control board sends half of the data: its processor is damaged.',
        [['board', 'Control board']],
        'owner',
      );
      await job.askApproval({
        lines: [['labour', 'Control board replaced, with the board', 24_800]],
        reason: 'The display is not the fault. The board behind it would have to be replaced.',
        onYes: 'We order the board and fit it.',
        onNo: 'We send it back for the return fee.',
      });
      job.later(3, '19:20');
      await job.decide('declined');
      job.later(1, '14:15');
      await job.move('pack-unrepaired', { by: 'front' });
      await payAndSendBack(job);
    },
  },
  {
    key: 'unclaimed-no-answer',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'cockle/power-socket',
        customer: 'sol-whitcombe',
        serial: 'OC-1502',
        problem: 'The adapter plug wobbles and the light flickers.',
        at: shop.ago(142, '17:25'),
      });
      await repairAsUsual(job, {
        finding: 'Centre pin of the power socket loose.',
        work: 'Power socket replaced.',
        minutes: 30,
        parts: [['DC-21', 'HC-25092']],
      });
      job.on(shop.days.workedAfter(shop.days.ago(100), 0), '10:00');
      await job.say('Your Cockle is ready. Shall we send it, or has your address changed?', 'front');
      job.on(shop.days.workedAfter(shop.days.ago(60), 0), '10:00');
      await job.say(
        'We still have your Cockle here and would like to send it to you. Please write to us.',
        'front',
      );
      job.on(shop.back(8), '17:40');
      await job.move('set-aside', {
        by: 'owner',
        note: 'Ready for more than three months, two letters without an answer',
      });
    },
  },
];
