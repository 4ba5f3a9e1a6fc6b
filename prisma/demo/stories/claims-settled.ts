import { writeOffLot } from '@/lib/bench/write-off-lot';
import { db } from '@/lib/db/client';
import { claimOn } from '../claim-course';
import { teachLesson } from '../lesson';
import type { Story } from './story';
import { payAndSendBack, repairOnBench } from './usual';

/** The claim that taught the sheets of USB-C sockets to tilt the plug: a cracked joint of ours. */
export const LESSON: Story = {
  key: 'ashdowner-lesson',
  tell: async (shop) => {
    const claim = await claimOn(await shop.told('ashdowner-no-charge'), {
      symptom: 'The cable falls out or must be held',
      details: 'It charges when the cable hangs down and stops when it lies on the table.',
      shots: [['socket', 'The plug hangs a little']],
      at: shop.ago(226, '21:30'),
    });
    claim.later(2, '10:25');
    await claim.arrive({ photos: [['recorder', 'As it came']] });
    claim.later(1, '11:10');
    await claim.move('assess');
    await claim.inspect({
      'connector-magnified': ['yes', 'Sits 0.4 mm high at the front left.', 'socket'],
      'previous-joints': ['yes', 'Front left anchor cracked all round: too little solder.', 'cracked-joint'],
      'self-test-opened': ['yes', 'Charge current drops to 0 when the plug is tilted.', 'meter'],
    });
    await claim.rule({
      cause: 'workmanship',
      reasonText:
        'One of the four anchors we soldered had too little solder and cracked. That was our work, so it is covered.',
      lesson: 'Tilt the plug to all four sides before a unit goes back: this joint would have shown.',
      by: 'owner',
    });
    await teachLesson(claim.number, claim.at);
    claim.later(1, '09:30');
    await claim.move('start-bench');
    await repairOnBench(claim, {
      work: 'All four anchors cleared and filled again, socket reseated. Plug tilted to all sides for two minutes.',
      minutes: 35,
    });
    claim.later(1, '15:40');
    await claim.sendBack({ postage: 480 });
    await claim.closeByClock();
  },
};

/** Claims that are settled, the oldest first. */
export const SETTLED: Story[] = [
  {
    key: 'aberystan-creeping',
    tell: async (shop) => {
      const claim = await claimOn(await shop.told('aberystan-sea-water'), {
        symptom: 'Keys or controls do things by themselves',
        details: 'It begins to record by itself, mostly in the morning.',
        battery: 'none',
        at: shop.ago(351, '08:05'),
      });
      claim.later(2, '10:35');
      await claim.arrive();
      claim.later(1, '11:15');
      await claim.move('assess');
      await claim.inspect({
        'liquid-signs-inside': ['yes', 'Old salt under the button matrix, none of it fresh.', 'corrosion'],
        'self-test-opened': ['yes', 'Record line falls to 0.4 V when the board is cold.', 'meter'],
      });
      await claim.rule({
        cause: 'weakened-by-original-damage',
        reasonText:
          'Salt from the first wave had crept under the button matrix, further than we looked. Finding it was our task, so it is covered.',
        lesson: 'After salt water the button matrix comes off, always.',
      });
      claim.later(1, '10:20');
      await claim.move('start-bench');
      await repairOnBench(claim, {
        work: 'Button matrix lifted, both sides washed and dried, one hour under warm air, one night in the cold.',
        minutes: 85,
      });
      claim.later(1, '15:45');
      await claim.sendBack({ postage: 480 });
      await claim.closeByClock();
    },
  },
  {
    key: 'rathnamoor-other-fault',
    tell: async (shop) => {
      const claim = await claimOn(await shop.told('rathnamoor-quiet-side'), {
        symptom: 'No sound at all',
        details: 'It worked well for months, now there is no sound at all, in the headphones or the cable.',
        at: shop.ago(190, '18:15'),
      });
      claim.later(3, '10:40');
      await claim.arrive();
      claim.later(1, '13:30');
      await claim.move('assess', { by: 'owner' });
      await claim.inspect(
        {
          'connector-magnified': ['no', 'Socket tight, contacts clean.', 'socket'],
          'previous-joints': ['no', 'Our joints are sound.', 'board'],
          'self-test-opened': ['yes', 'Output amplifier gives nothing with a good input.', 'meter'],
        },
        { by: 'owner' },
      );
      await claim.rule({
        cause: 'separate-fault',
        reasonText:
          'The socket we replaced works. The small amplifier before it has failed by itself, which our certificate does not cover. We can replace it for the price below, or send your Minnow back free of charge.',
        by: 'owner',
      });
      claim.later(1, '09:15');
      await claim.secondLook();
      await claim.find(
        'Output amplifier dead: supply present, input present, no output.',
        [['board', 'The amplifier beside the socket']],
        'owner',
      );
      await claim.askApproval({
        lines: [
          ['labour', 'Output amplifier replaced', 3600],
          ['part', 'Amplifier, eight legs', 480],
        ],
        reason:
          'A part we did not touch has failed. Replacing it is a paid repair with a certificate of its own.',
        onYes: 'We replace the amplifier.',
        onNo: 'We send it back free of charge.',
      });
      claim.later(1, '20:05');
      await claim.decide('accepted', { isStartAsked: true });
      claim.later(1, '10:10');
      await repairOnBench(claim, {
        work: 'Output amplifier replaced, two capacitors beside it renewed, played for an hour.',
        minutes: 50,
        by: 'owner',
      });
      await payAndSendBack(claim);
    },
  },
  {
    key: 'celikkanat-cell',
    tell: async (shop) => {
      const claim = await claimOn(await shop.told('celikkanat-evening'), {
        symptom: 'Runs down within an hour',
        details: 'It was good for two months. Now it is as before.',
        at: shop.ago(150, '08:20'),
      });
      claim.later(2, '10:15');
      await claim.arrive();
      await claim.move('assess');
      await claim.inspect({
        'self-test-as-received': ['yes', 'From full to empty in 52 minutes.', 'meter'],
        'self-test-opened': ['yes', 'Cell holds 890 of 2500 mAh after 40 charges.', 'battery'],
      });
      await claim.rule({
        cause: 'fitted-part',
        reasonText:
          'The battery we fitted has lost two thirds of its size in two months. That is a bad cell, so it is covered.',
        lesson: 'Note the lot. One cell proves nothing; a second one would.',
      });
      claim.later(1, '11:30');
      await claim.move('start-bench');
      await repairOnBench(claim, {
        work: 'Cell replaced with one of another lot, full charge watched.',
        minutes: 36,
        parts: [['CELL-25', 'LS-6850']],
      });
      claim.later(1, '16:10');
      await claim.sendBack({ postage: 480 });
      await claim.closeByClock();
    },
  },
  {
    key: 'sargo-partly',
    tell: async (shop) => {
      const claim = await claimOn(await shop.told('sargo-one-ear'), {
        symptom: 'It crackles when the plug moves',
        details: 'It crackles, and the volume wheel is stiff since it fell.',
        at: shop.ago(128, '12:50'),
      });
      claim.later(4, '10:35');
      await claim.arrive({ extra: ['Headphone adapter'] });
      claim.later(1, '14:00');
      await claim.move('assess');
      await claim.inspect({
        'outside-damage': ['yes', 'Corner dented beside the volume wheel, paint gone.', 'unit'],
        'previous-joints': ['yes', 'Left joint of the socket dull and cracked.', 'cracked-joint'],
        'self-test-as-received': ['yes', 'Crackles on the left. The wheel grinds.', 'meter'],
      });
      await claim.rule({
        cause: 'workmanship',
        alsoFound: 'damage-after-return',
        reasonText:
          'A joint of ours at the headphone socket has cracked: that is covered and costs you nothing. The volume wheel was bent by a blow after we sent your Spar back, as the photo of the dented corner shows: that is not covered.',
        lesson: 'Let the socket cool for a minute before the board is turned.',
      });
      claim.later(1, '09:20');
      await claim.secondLook();
      await claim.say('Thank you for the clear photo. Leave the wheel as it is, I can live with it.');
      await claim.settle();
      claim.later(1, '10:30');
      await claim.move('start-bench');
      await repairOnBench(claim, {
        work: 'Joints of the headphone socket cleaned and soldered again. Volume wheel left as agreed.',
        minutes: 30,
      });
      claim.later(1, '15:30');
      await claim.sendBack({ postage: 1250 });
      await claim.closeByClock();
    },
  },
  {
    key: 'lindqvarn-sound',
    tell: async (shop) => {
      const claim = await claimOn(await shop.told('lindqvarn-not-seen'), {
        symptom: 'The computer does not see it',
        details: 'Again not seen by the computer. It charges.',
        at: shop.ago(98, '22:10'),
      });
      claim.later(4, '10:20');
      await claim.arrive({ extra: ['USB cable'] });
      await claim.move('assess');
      await claim.inspect({
        'self-test-as-received': ['no', 'Seen by three computers, for an hour each.', 'meter'],
        'self-test-opened': [
          'no',
          'All contacts below 0.1 ohm, also when tilted. The cable sent along has a broken data wire.',
          'socket',
        ],
      });
      await claim.rule({
        cause: 'no-fault-found',
        reasonText:
          'Your recorder works on our bench with three computers. The cable you sent along has a broken data wire, so we put another one in the box. It comes back to you free of charge.',
      });
      claim.later(1, '09:10');
      await claim.secondLook();
      await claim.move('return-unrepaired');
      claim.later(1, '15:50');
      await claim.sendBack({ postage: 1180 });
      await claim.closeByClock();
    },
  },
  {
    key: 'stanescu-gray-cell',
    tell: async (shop) => {
      const claim = await claimOn(await shop.told('stanescu-gray-bus'), {
        symptom: 'Switches off by itself',
        details: 'It says half full and goes off.',
        at: shop.ago(62, '17:40'),
      });
      claim.later(2, '10:30');
      await claim.arrive();
      claim.later(1, '11:20');
      await claim.move('assess', { by: 'owner' });
      await claim.inspect(
        {
          'self-test-as-received': ['yes', 'Off at 48 per cent under load.', 'meter'],
          'self-test-opened': [
            'yes',
            'Cell resistance three times that of a new one. Same lot as the last one, NB-0588.',
            'battery',
          ],
        },
        { by: 'owner' },
      );
      await claim.rule({
        cause: 'fitted-part',
        reasonText:
          'The battery we fitted is weak. It comes from a lot that has failed before, so it is covered without a question.',
        lesson:
          'Measure the resistance of a cell before it is fitted, and take the rest of lot NB-0588 off the shelf.',
        by: 'owner',
      });
      claim.later(1, '13:40');
      await claim.move('start-bench', { by: 'owner' });
      await repairOnBench(claim, {
        work: 'Cell replaced, resistance measured before and after, full charge watched.',
        minutes: 40,
        parts: [['CELL-25', 'LS-6850']],
        by: 'owner',
      });
      claim.later(1, '16:00');
      await claim.sendBack({ postage: 480 });
      await claim.closeByClock();
      const lotId = shop.lot('CELL-25', 'NB-0588');
      const { inStock } = await db.lot.findUniqueOrThrow({ where: { id: lotId } });
      await writeOffLot({
        lotId,
        inStock,
        quantity: 18,
        reason: 'Weak cells came back from this lot; it goes to the supplier.',
        userId: shop.hands.owner.id,
        now: claim.at,
      });
    },
  },
];
