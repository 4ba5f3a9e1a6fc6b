import type { Story } from './story';
import { repairAsUsual } from './usual';

/** Units that are ready, paid or not, or on their way home. */
export const GOING_BACK: Story[] = [
  {
    key: 'ready-unpaid',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'gull/usb-socket',
        customer: 'idris-vellacott',
        serial: 'G-119 377',
        problem: 'The plug slips out.',
        at: shop.before(12, 3, '07:58'),
      });
      await repairAsUsual(job, {
        finding: 'Shell of the micro socket spread.',
        work: 'Socket replaced, tabs soldered through.',
        minutes: 40,
        parts: [['USB-MB-5', 'NB-0633']],
      });
    },
  },
  {
    key: 'ready-part-paid',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'slipway-16/pads',
        customer: 'noor-bakhshi',
        serial: '2603104775',
        problem: 'Pad 5 must be hit hard, pad 12 is dead.',
        at: shop.before(17, 3, '19:15'),
      });
      await repairAsUsual(job, {
        finding: 'Sensor sheet worn under six pads.',
        shots: [['keys', 'Sheet under pads 5 to 8']],
        work: 'Pad mat and sensor sheet replaced, strength evened out over all pads.',
        minutes: 120,
        parts: [['PAD-MAT', 'LS-7120']],
        by: 'owner',
      });
      job.later(1, '12:10');
      await job.pay({ amount: 8000, method: 'bank transfer' });
      await job.say('Half of it today, the rest on Monday. Is that all right?');
      await job.say('Yes. It goes out the working day after the rest is here.', 'front');
    },
  },
  {
    key: 'ready-paid',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'spar/headphone-socket',
        customer: 'ewa-laskowa',
        serial: 'HS25M461P',
        problem: 'Right side only.',
        sent: ['Leather sleeve', 'USB cable'],
        at: shop.before(11, 2, '15:45'),
      });
      await repairAsUsual(job, {
        finding: 'Left contact bent under the sleeve contact.',
        work: 'Headphone socket replaced, levels matched to 0.2 dB.',
        minutes: 46,
        parts: [['JACK-35-4', 'LS-8120']],
      });
      job.on(shop.back(0), '16:20');
      await job.pay({ method: 'card' });
    },
  },
  {
    key: 'sent-paid-twice',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'meridian-two/display',
        customer: 'teodor-stan',
        serial: 'M2-08655-K',
        problem: 'Display flickers when it is cold.',
        sent: ['Carry pouch'],
        at: shop.before(14, 2, '18:40'),
      });
      await repairAsUsual(job, {
        finding: 'Ribbon cable cracked at the fold.',
        shots: [['unit', 'Display at 5 °C']],
        work: 'Display with ribbon replaced, an hour in the cold box.',
        minutes: 62,
        parts: [['DISP-128', 'NB-0671']],
      });
      job.later(1, '09:30');
      await job.pay({ method: 'card' });
      await job.pay({ amount: 8800, method: 'bank transfer' });
      job.later(1, '10:20');
      await job.say(
        'Your transfer came as well as your card payment. We have sent the second one back.',
        'front',
      );
      await job.pay({ amount: -8800, method: 'bank transfer' });
      job.on(shop.back(2), '16:10');
      await job.sendBack();
    },
  },
  {
    key: 'sent-two-days-ago',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'meridian-two/usb-socket',
        customer: 'hedda-lindqvarn',
        serial: 'M2-11533-P',
        problem: 'The cable must be held.',
        at: shop.before(13, 3, '20:05'),
      });
      await repairAsUsual(job, {
        finding: 'Anchors free, two contacts cracked at the joint.',
        shots: [['cracked-joint', 'Contact A4']],
        work: 'Socket replaced, four anchors filled, tilted to all sides.',
        minutes: 54,
        parts: [['USB-C-24', 'HC-26044']],
      });
      job.on(shop.back(3), '11:00');
      await job.pay({ method: 'bank transfer' });
      job.on(shop.back(2), '16:25');
      await job.sendBack();
    },
  },
  {
    key: 'sent-last-night',
    tell: async (shop, key) => {
      const job = await shop.book(key, {
        repair: 'cockle/power-socket',
        customer: 'lucien-garrel',
        serial: 'OC-1633',
        problem: 'No light on the adapter. With another adapter it is the same.',
        sent: ['Wall adapter'],
        at: shop.before(11, 2, '13:13'),
      });
      await repairAsUsual(job, {
        finding: 'Switch contact of the power socket burnt.',
        work: 'Power socket replaced, polarity of the adapter checked.',
        minutes: 30,
        parts: [['DC-21', 'HC-26031']],
        by: 'owner',
      });
      job.on(shop.back(1), '12:45');
      await job.pay({ method: 'pay link' });
      job.on(shop.back(0), '16:30');
      await job.sendBack();
    },
  },
];
