import type { Story } from './story';
import { repairOnBench } from './usual';

/** Units that are here and wait for us, for their customer, or for a part. */
export const WAITING: Story[] = [
  {
    key: 'arrived-yesterday',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'meridian-four/headphone-socket',
        customer: 'yuki-amanohara',
        serial: 'M4-12037-A',
        problem: 'Only noise on the left when I walk.',
        sent: ['Wind shield', 'Shoulder strap'],
        at: shop.before(0, 5, '21:05'),
      });
      job.on(shop.back(0), '10:12');
      await job.arrive({
        missing: ['Shoulder strap'],
        extra: ['Memory card'],
        photos: [
          ['parcel', 'One corner crushed, unit unharmed'],
          ['recorder', 'From above'],
          ['label', 'Serial plate'],
        ],
      });
    },
  },
  {
    key: 'arrived-misread',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'meridian-two/display',
        customer: 'rhys-penmarrow',
        serial: 'M2-0B318-S',
        problem: 'Top third of the display is blank.',
        sent: ['Carry pouch'],
        at: shop.before(0, 5, '12:31'),
      });
      job.on(shop.back(0), '10:31');
      await job.arrive({
        serial: 'M2-08318-S',
        photos: [
          ['label', 'Serial plate, worn'],
          ['recorder', 'From above'],
        ],
      });
    },
  },
  {
    key: 'arrived-other-unit',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'sprat/footswitch',
        customer: 'tamsin-orchard',
        serial: 'OS-0791',
        problem: 'Now the switch of my delay is going: I have to press twice.',
        at: shop.before(1, 5, '13:44'),
      });
      job.on(shop.back(1), '10:40');
      await job.arrive({
        serial: 'OS-1163',
        photos: [
          ['pedal', 'The unit that came'],
          ['label', 'Its plate'],
        ],
      });
      await job.say(
        'The Sprat in your parcel has the serial OS-1163, you booked OS-0791. Do you have two? Tell us which one this is, then we go on.',
        'front',
      );
    },
  },
  {
    key: 'assessing-hot',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'bollard/controls',
        customer: 'constance-bly',
        serial: 'HB25R3105',
        problem: 'The volume jumps, mostly on the right.',
        at: shop.before(1, 6, '10:20'),
      });
      job.on(shop.back(1), '10:05');
      await job.arrive({ photos: [['unit', 'From above']] });
      job.on(shop.back(0), '14:10');
      await job.move('assess', { by: 'owner' });
    },
  },
  {
    key: 'assessing-found',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'slipway-16/midi-sockets',
        customer: 'arlo-quennell',
        serial: '2610144079',
        problem: 'Nothing is sent. Receiving works.',
        sent: ['Wall adapter'],
        at: shop.before(3, 4, '20:55'),
      });
      job.on(shop.back(3), '10:50');
      await job.arrive();
      job.on(shop.back(1), '15:00');
      await job.move('assess');
      await job.find('Outgoing socket sound. The driver before it gets warm and gives half its level.', [
        ['meter', 'Level at the driver'],
      ]);
    },
  },
  {
    key: 'frayed-meridian',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'meridian-two/usb-socket',
        customer: 'zofia-wrona',
        serial: 'M2-11806-F',
        problem: 'It only charges when I hold the cable up. Since last week not at all.',
        history: ['dropped'],
        sent: ['USB cable', 'Carry pouch'],
        at: shop.before(3, 3, '19:42'),
      });
      job.on(shop.back(3), '10:20');
      await job.arrive({
        photos: [
          ['parcel', 'The parcel as it came'],
          ['recorder', 'From above'],
        ],
      });
      job.later(1, '11:05');
      await job.move('assess');
      await job.find('The fall has torn the socket off on one side. Pads A6 and A7 came away with it.', [
        ['bent-socket', 'The socket, pulled up at the left'],
        ['lifted-pads', 'A6 and A7, lifted'],
      ]);
      await job.pointAt('The socket, pulled up at the left', [
        { x: 0.29, y: 0.77, text: 'shell tab torn off the board' },
        { x: 0.5, y: 0.48, text: 'tongue bent' },
      ]);
      await job.find('The trace behind A7 is broken 3 mm from the pad; the rest of the path measures well.');
      await job.askApproval({
        lines: [
          ['labour', 'USB-C socket replaced', 7200],
          ['labour', 'Two pads and a trace rebuilt with 0.1 mm wire', 2400],
        ],
        reason:
          'The socket tore two of its pads and a bit of trace off the board. A new socket alone would not hold; we have to rebuild them with fine wire.',
        onYes: 'We rebuild the pads and the trace and replace the socket.',
        onNo: 'We send it back unrepaired for the return fee.',
      });
    },
  },
  {
    key: 'approval-long-waited',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'gull/buttons',
        customer: 'marta-zelenko',
        serial: 'G-119 004',
        problem: 'The record button counts double.',
        at: shop.before(15, 8, '09:36'),
      });
      job.on(shop.back(15), '10:30');
      await job.arrive();
      job.later(1, '11:10');
      await job.move('assess', { by: 'owner' });
      await job.find(
        'Buttons worn, and the sheet under the record button is cracked. New buttons alone would fail soon.',
        [['keys', 'The cracked sheet']],
        'owner',
      );
      await job.askApproval({
        lines: [
          ['labour', 'Buttons renewed', 4600],
          ['part', 'Button sheet', 850],
        ],
        reason: 'The sheet under the buttons is cracked and has to be replaced with them.',
        onYes: 'We renew the buttons and the sheet.',
        onNo: 'We send it back unrepaired for the return fee.',
      });
      job.on(shop.back(5), '10:15');
      await job.say('We asked you about a changed price two weeks ago. Did our message reach you?', 'front');
    },
  },
  {
    key: 'awaiting-display',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'jetty-61/display',
        customer: 'beatriz-olmeda',
        serial: 'HJ 250 0418',
        problem: 'Spots on the display since the flight. You did its sockets last winter.',
        at: shop.before(6, 7, '18:02'),
      });
      job.on(shop.back(6), '10:10');
      await job.arrive();
      job.later(1, '13:35');
      await job.move('assess');
      await job.find(
        'Display cracked under the film at the right edge. The round sockets we fitted are sound.',
        [['unit', 'Right edge under slanting light']],
      );
      await job.orderAndWait('DISP-LONG', { from: 'Nesbrook Parts', workingDays: 7 });
      await job.say(
        'The display for the Jetty is a long one that we have to order. We expect it next week.',
        'front',
      );
      job.later(1, '19:10');
      await job.say('No hurry, I have rehearsals without it.');
    },
  },
  {
    key: 'bench-late',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'keel-25/key-contacts',
        customer: 'priya-rathnam',
        serial: 'KL25-01880',
        problem: 'Seven keys are silent, always the same ones.',
        sent: ['USB cable'],
        at: shop.before(9, 5, '12:12'),
      });
      job.on(shop.back(9), '10:22');
      await job.arrive();
      job.later(2, '15:10');
      await job.move('assess');
      await job.find(
        'Contact carbon worn on two strips. Under them the board has a hairline crack across three tracks.',
        [
          ['keys', 'Opened'],
          ['board', 'Hairline crack at the middle screw'],
        ],
      );
      await job.move('start-bench');
      job.later(2, '11:00');
      await job.use('KEY-STRIP', 'NB-0526', 2);
      await job.use('WIRE-01', 'HC-25033');
      await job.work(
        'Three tracks bridged with 0.1 mm wire across the crack, each measured from end to end.',
        70,
      );
      for (const track of ['1', '2', '3'])
        await job.lay({
          fromPoint: `track ${track}, left of the crack`,
          toPoint: `track ${track}, right of it`,
          lengthMm: 40,
          diameterUm: 100,
          milliohms: 98,
        });
      await job.photograph('work', [['wire-bridge', 'Three tracks bridged']]);
      await job.say(
        'This one is slower than we promised: the board has a crack that we bridge by hand. It costs you nothing more.',
        'bench',
      );
    },
  },
  {
    key: 'bench-approved',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'meridian-four/usb-socket',
        customer: 'petra-kiesling',
        serial: 'M4-10031-B',
        problem: 'You mended its headphone socket. Now the cable does not hold.',
        at: shop.before(5, 6, '08:15'),
      });
      job.on(shop.back(5), '10:35');
      await job.arrive({ photos: [['recorder', 'As it came']] });
      job.later(1, '14:20');
      await job.move('assess', { by: 'owner' });
      await job.find(
        'Socket worn out, and one ground pad lifted with its via.',
        [['lifted-pads', 'Ground pad B12']],
        'owner',
      );
      await job.askApproval({
        lines: [
          ['labour', 'USB-C socket replaced', 7800],
          ['labour', 'Ground pad and via rebuilt', 1800],
          ['discount', 'Second repair of this unit within a year and a half', -600],
        ],
        reason: 'One pad came off with its connection through the board. We rebuild both.',
        onYes: 'We rebuild pad and via and replace the socket.',
        onNo: 'We send it back unrepaired for the return fee.',
      });
      job.on(shop.back(2), '19:31');
      await job.decide('accepted');
    },
  },
  {
    key: 'bench-today',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'meridian-two/battery',
        customer: 'gwen-abery',
        serial: 'M2-10977-N',
        problem: 'Twenty minutes, then off.',
        battery: 'weak',
        at: shop.before(2, 3, '07:25'),
      });
      job.on(shop.back(2), '10:15');
      await job.arrive();
      job.later(1, '13:15');
      await job.move('assess');
      await job.find('Cell at a quarter of its size, flat and dry.', [['battery', 'Old cell']]);
      await job.move('start-bench');
      await job.use('CELL-25', 'LS-8204');
    },
  },
  {
    key: 'proving-redone',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'slipway-8/usb-socket',
        customer: 'desmond-achebe',
        serial: '2610177251',
        problem: 'Loses power when the lid is closed on the cable.',
        sent: ['USB cable', 'Lid'],
        at: shop.before(4, 5, '20:20'),
      });
      job.on(shop.back(4), '10:28');
      await job.arrive();
      job.later(1, '11:25');
      await job.move('assess');
      await job.find('Socket sheared at the rear anchors.', [['socket', 'Rear anchors']]);
      await job.move('start-bench');
      job.later(1, '10:30');
      await job.use('USB-C-24', 'HC-26044');
      await job.work('Socket replaced, four anchors filled.', 60);
      await job.move('prove');
      await job.passChecks('bench', 'USB Type-C receptacle: every pin');
      await job.check(
        'USB Type-C receptacle: worst contact',
        { reading: 0.83 },
        'Contact A8, joint looks grey.',
      );
      await job.move('fail-check');
      await job.find('Joint of contact A8 cold. Seen only under slanting light.', [
        ['cracked-joint', 'Contact A8'],
      ]);
      await job.work('Row A soldered again with fresh flux, washed.', 15);
      await job.move('prove');
      await job.check(
        'USB Type-C receptacle: worst contact',
        { reading: 0.14 },
        'All of row A measured again.',
      );
      job.later(1, '09:40');
      await job.passChecks('bench', 'Voltage at the socket');
    },
  },
  {
    key: 'proving-half-way',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'minnow/headphone-socket',
        customer: 'lowri-tegeingl',
        serial: 'MN 401 872',
        problem: 'Crackle on the right when the plug turns.',
        at: shop.before(3, 5, '16:05'),
      });
      job.on(shop.back(3), '10:44');
      await job.arrive();
      job.later(1, '13:50');
      await job.move('assess', { by: 'owner' });
      await job.find('Ring contact of the socket worn.', [], 'owner');
      await job.move('start-bench', { by: 'owner' });
      await job.use('JACK-35-4', 'LS-8120', 1, 'owner');
      await job.work('Headphone socket replaced.', 35, 'owner');
      await job.move('prove', { by: 'owner' });
      await job.passChecks('owner', '3.5 mm TRRS jack: worst contact');
    },
  },
  {
    key: 'usual-next',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'spar/usb-socket',
        customer: 'felix-ashdown',
        serial: 'HS26F019U',
        problem: 'Charges only with one old cable.',
        sent: ['USB cable'],
        at: shop.before(7, 4, '22:30'),
      });
      job.on(shop.back(7), '10:18');
      await job.arrive();
      job.later(1, '11:40');
      await job.move('assess');
      await job.find('Dirt pressed into the socket, contacts bent. Board sound.', [
        ['bent-socket', 'Before'],
      ]);
      await job.move('start-bench');
      job.later(1, '10:10');
      await repairOnBench(job, {
        work: 'Socket replaced, anchors filled, plug tilted to all sides.',
        minutes: 55,
        parts: [['USB-C-24', 'HC-26044']],
      });
    },
  },
];
