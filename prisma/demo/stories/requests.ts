import { addDays } from '@/lib/calendar/day';
import { dayOfInstant } from '../days';
import { RequestCourse } from '../request-course';
import type { Story } from './story';

/** Prices that were asked for because no list has them. Those that ended come first, as they did. */
export const REQUESTS: Story[] = [
  {
    key: 'asked-declined',
    tell: async (shop, key) => {
      const request = await RequestCourse.ask(shop, key, {
        customer: 'harun-celik',
        model: 'keel-49',
        serial: '2511073318',
        symptoms: ['A key does not sound'],
        problem: 'Coffee over the lowest octave. Eleven keys are dead and some others stick.',
        history: ['liquid'],
        photos: [['board', 'The board below the keys']],
        at: shop.ago(61, '21:40'),
      });
      await request.later(1, '10:35').price({
        repair: 'keel-49/key-contacts',
        lines: [
          ['labour', 'Keys taken out, cleaned and put back', 8400],
          ['labour', 'Contact strips of two octaves rebuilt', 7800],
          ['part', 'Contact strips', 2600],
        ],
        reason: 'The picture shows coffee below the contact strips of two octaves. They cannot be washed.',
        proposal: 'We clean the whole keyboard and renew the contact strips of the two octaves.',
        workingDays: 9,
      });
      request.on(addDays(dayOfInstant(request.at), 3), '19:12');
      await request.decide('declined');
    },
  },
  {
    key: 'asked-lapsed',
    tell: async (shop, key) => {
      const request = await RequestCourse.ask(shop, key, {
        customer: 'delphine-moreau',
        model: 'cockle',
        symptoms: ['It makes a noise it should not make'],
        problem: 'It hums since it was plugged into another supply. The hum follows the level.',
        at: shop.before(35, 1, '08:55'),
      });
      const sentOn = shop.back(35);
      await request.on(sentOn, '11:20').price({
        repair: 'cockle/power-socket',
        lines: [
          ['labour', 'Supply side measured, filter and protection renewed', 5400],
          ['part', 'Filter capacitors and protection diode', 900],
        ],
        reason: 'A supply of the wrong polarity takes the protection diode and the filter with it.',
        proposal: 'We renew the supply side of the board and play it for an hour.',
        workingDays: 6,
      });
      await request.on(addDays(sentOn, 25), '06:00').clockRound('reminded');
      await request.on(addDays(sentOn, 31), '06:00').clockRound('lapsed');
    },
  },
  {
    key: 'asked-turned-down',
    tell: async (shop, key) => {
      const request = await RequestCourse.ask(shop, key, {
        customer: 'kit-farrowdale',
        device: 'Ostrel Whelk tape echo',
        symptoms: ['No sound, or sound drops out'],
        problem: 'The tape drags and the echo comes late. The motor gets hot.',
        photos: [['unit', 'From above']],
        at: shop.before(12, 1, '17:31'),
      });
      await request
        .on(shop.back(12), '14:05')
        .turnDown(
          'Motors for this echo are not made any more and cannot be wound again. Please do not run it: the heat can set fire to the tape. A recycling yard takes it.',
        );
    },
  },
  {
    key: 'asked-lapses-soon',
    tell: async (shop, key) => {
      const request = await RequestCourse.ask(shop, key, {
        customer: 'sander-dekuyt',
        model: 'slipway-8',
        serial: '2409150022',
        symptoms: ['The case is broken'],
        problem: 'It fell down the stairs. The case is cracked across, it still plays.',
        history: ['dropped'],
        photos: [['unit', 'The crack, from above']],
        at: shop.ago(31, '13:02'),
      });
      const sentOn = shop.days.workedAfter(shop.days.ago(28), 0);
      await request.on(sentOn, '15:10').price({
        repair: 'slipway-8/pads',
        lines: [
          ['labour', 'Case taken apart, cracked half exchanged', 6600],
          ['part', 'Lower half of the case', 3400],
        ],
        reason: 'The crack runs through two screw posts. Glue does not hold there.',
        proposal: 'We exchange the lower half of the case and try every pad.',
        workingDays: 8,
      });
      const remindOn = addDays(sentOn, 25);
      if (remindOn < shop.days.today) await request.on(remindOn, '06:00').clockRound('reminded');
    },
  },
  {
    key: 'asked-booked',
    tell: async (shop, key) => {
      const request = await RequestCourse.ask(shop, key, {
        customer: 'idris-vellacott',
        model: 'meridian-two',
        serial: 'M2-12740-B',
        symptoms: ['Does not charge'],
        problem: 'Somebody tried to mend the socket and tore the board. Two traces are off.',
        history: ['opened'],
        photos: [['lifted-pads', 'What is left of the pads']],
        at: shop.before(5, 2, '22:15'),
      });
      await request.on(shop.back(5), '10:45').price({
        repair: 'meridian-two/usb-socket',
        lines: [
          ['labour', 'USB-C socket replaced', 7200],
          ['labour', 'Four pads and two traces rebuilt with 0.1 mm wire', 4800],
        ],
        reason: 'Four pads are gone and two traces end in the air. The layers below look whole.',
        proposal: 'We lay the traces again with enamelled wire, fix them with resin and fit a new socket.',
        workingDays: 7,
        note: 'If the layers below are torn too, we ask you before we do more.',
      });
      request.on(shop.back(3), '20:18');
      await request.decide('accepted');
      await request.book({ sent: ['Carry pouch'] });
    },
  },
  {
    key: 'asked-accepted',
    tell: async (shop, key) => {
      const request = await RequestCourse.ask(shop, key, {
        customer: 'lowri-tegeingl',
        model: 'bollard',
        serial: 'HB24K2207',
        symptoms: ['A socket is loose or broken'],
        problem: 'The plug broke off inside the headphone socket. I cannot get it out.',
        photos: [['bent-socket', 'The rest of the plug']],
        at: shop.before(4, 1, '16:20'),
      });
      await request.on(shop.back(4), '16:30').price({
        repair: 'bollard/controls',
        lines: [
          ['labour', 'Broken plug taken out, headphone socket replaced', 5900],
          ['part', 'Headphone socket', 700],
        ],
        reason: 'The rest of the plug holds the spring of the socket open.',
        proposal: 'We take the socket out with the plug in it and fit a new one.',
        workingDays: 5,
      });
      request.on(shop.back(1), '21:44');
      await request.decide('accepted');
    },
  },
  {
    key: 'asked-quoted',
    tell: async (shop, key) => {
      const request = await RequestCourse.ask(shop, key, {
        customer: 'willa-hartnoll',
        model: 'meridian-four',
        serial: 'M4-11872-C',
        symptoms: ['The screen or lights do not work'],
        problem: 'It lay in the rain for an hour. The display shows lines and one channel is silent.',
        history: ['liquid'],
        photos: [
          ['recorder', 'From above'],
          ['board', 'Below the display'],
        ],
        at: shop.before(3, 2, '20:31'),
      });
      await request
        .on(shop.back(3), '09:50')
        .question('Was it switched on while it was wet, and for how long?');
      request.on(shop.back(2), '07:40');
      await request.answer('It was recording the whole time, until it stopped by itself.', [
        ['label', 'Its plate'],
      ]);
      await request.on(shop.back(2), '15:35').price({
        repair: 'meridian-four/liquid',
        lines: [
          ['labour', 'Opened, cleaned in a bath and dried', 9600],
          ['labour', 'Display connector and one input rebuilt', 5400],
          ['part', 'Display cable', 1450],
          ['postage', 'Parcel back, insured', 1150],
        ],
        reason:
          'Water ran in while it was recording. The second picture shows corrosion at the display connector and at the left input.',
        proposal: 'We clean the boards, rebuild the connector and the left input, and record for two hours.',
        workingDays: 9,
        note: 'Please take the battery out and do not charge it until we have seen it.',
      });
    },
  },
  {
    key: 'asked-questioned',
    tell: async (shop, key) => {
      const request = await RequestCourse.ask(shop, key, {
        customer: 'teodor-stan',
        model: 'slipway-16',
        serial: '2602281190',
        symptoms: ['It does not switch on'],
        problem: 'Nothing lights up any more. It was fine the evening before.',
        at: shop.before(1, 1, '18:03'),
      });
      await request
        .on(shop.back(1), '16:15')
        .question(
          'Which wall adapter do you use, and does anything light up for a moment when you plug it in?',
        );
    },
  },
  {
    key: 'asked-waiting',
    tell: async (shop, key) => {
      await RequestCourse.ask(shop, key, {
        customer: 'noor-bakhshi',
        model: 'kittiwake',
        serial: 'OK-2590',
        symptoms: ['A socket is loose or broken'],
        problem:
          'I stepped on the plug. The output socket hangs in the case and the board is cracked beside it.',
        history: ['dropped'],
        photos: [
          ['pedal', 'From above'],
          ['board', 'The crack beside the socket'],
        ],
        at: shop.before(0, 1, '19:26'),
      });
    },
  },
];
