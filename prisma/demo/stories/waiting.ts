import type { Story } from './story';

export const WAITING: Story[] = [
  {
    key: 'frayed-meridian',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'meridian-two/usb-socket',
        customer: 'maren-holt',
        serial: 'M2-11806-F',
        problem: 'It only charges when I hold the cable up. Since last week not at all.',
        history: ['dropped'],
        sent: ['USB cable', 'Carry pouch'],
        at: shop.ago(9, '19:42'),
      });
      job.on(shop.back(3), '10:20');
      await job.arrive({
        photos: [
          ['parcel', 'The parcel as it came'],
          ['unit', 'From above'],
        ],
      });
      job.later(1, '11:05');
      await job.move('assess');
      await job.find('The socket has torn two pads off with it, A6 and A7.', [
        ['lifted-pads', 'A6 and A7, lifted'],
      ]);
      await job.askApproval({
        lines: [
          ['labour', 'USB-C socket replaced', 7200],
          ['labour', 'Two pads rebuilt with 0.1 mm wire', 2400],
        ],
        reason: 'The socket tore two of its pads off the board. They have to be rebuilt with fine wire.',
        onYes: 'We rebuild the two pads and replace the socket.',
        onNo: 'We send it back unrepaired for the return fee.',
      });
    },
  },
];
