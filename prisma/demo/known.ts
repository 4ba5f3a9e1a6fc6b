/**
 * Numbers of the demonstration that the walks name. They come out the same at every first start; a test
 * fills a database and compares.
 */
export const KNOWN = {
  /** a changed price with findings and photos waits for the customer's yes or no */
  awaitingApproval: { job: 'J4GBHCPMQ', serial: 'M2-11806-F' },
  /** ready since a while, not paid */
  readyUnpaid: { job: 'JYZCZKGW4', serial: 'G-119 377' },
  /** paid yesterday, can go out today */
  readyPaid: { job: 'J10FY60SN', serial: 'HS25M461P' },
  /** a failed reading and the one after it */
  provedAgain: { job: 'JAPGPBWWJ', serial: '2610177251' },
  /** on its way to the workshop, its parcel known by the carrier's reference */
  expected: { job: 'J3J0ZX6VR', serial: 'OK-2447', parcel: 'CE473124829IE' },
  /** the serial on the unit looks like the one that was typed */
  likelyMisread: { job: 'J76WQP1HN', typed: 'M2-0B318-S', read: 'M2-08318-S' },
  /** another unit than the one that was booked */
  otherUnit: { job: 'JQYNMAV2T', typed: 'OS-0791', read: 'OS-1163' },
  unclaimed: { job: 'J1KG49TRF', serial: 'OC-1502' },

  /** covered, without a claim so far */
  liveCertificate: { certificate: 'WTPQEB754', serial: 'M2-09214-J' },
  /** its cover has ended */
  lapsedCertificate: { certificate: 'WBMEZNFFW', serial: 'M2-04471-C' },
  /** revision 1 was replaced by revision 2 after a covered claim */
  renewedCertificate: { certificate: 'WYWMMJSE8', serial: 'M2-06118-D' },

  /** opened the day before yesterday, its parcel not here yet; its certificate ends in a week or two */
  openClaim: { claim: 'CBKFX3XPK', job: 'JKH7R9BCH', certificate: 'W3P6PC8MD' },
  /** covered; taught the check on tilting the plug */
  lessonClaim: { claim: 'CEFKY1BYE', job: 'JT2HT8QF7', certificate: 'WYWMMJSE8' },
  /** ruled not covered, waits for the owner's second look */
  secondLookClaim: { claim: 'C6JSS0X58', job: 'JEG3SQZRX', certificate: 'WGRR64AWZ' },
  /** the customer has asked to look again */
  contestedClaim: { claim: 'CBBGCM07S', job: 'J4XXVRRBD', certificate: 'WX8Z3K2P6' },
  /** opened in the days of grace */
  lateClaim: { claim: 'CKPN4YFNR', job: 'JVGG7G2WE', certificate: 'WWTEDR71E' },

  /** waits for a price, with photos */
  priceAsked: { quote: 'QAEVAKQF9' },
  /** a price that waits for the customer's yes or no */
  priceSent: { quote: 'QD8Q0XVQZ' },
  /** accepted and booked as a job */
  priceBooked: { quote: 'Q5P5JFZZ5', job: 'J2ZNA5W53' },

  /** the part whose lot keeps coming back */
  badLot: { part: 'CELL-25', lot: 'NB-0588' },
} as const;
