/** Words of the trade that are no stitches, and what is offered while a row is written. */

/** What small words of patterns mean. Published lists of abbreviations agree on them. */
export const HAND_WORDS: Readonly<Record<string, string>> = {
  pm: 'place a marker',
  sm: 'slip the marker to the right needle',
  slm: 'slip the marker to the right needle',
  rm: 'take the marker out',
  m: 'marker',
  mkr: 'marker',
  bor: 'beginning of the round',
  turn: 'turn the work; what is left of the row stays unworked',
  'w&t': 'wrap the next stitch, then turn the work',
  rnd: 'round',
  rnds: 'rounds',
  rs: 'right side, the one that is seen when worn',
  ws: 'wrong side',
  rep: 'repeat',
  rpt: 'repeat',
  st: 'stitch',
  sts: 'stitches',
  tog: 'together',
  tbl: 'through the back loop',
  psso: 'pass the slipped stitch over',
  p2sso: 'pass the 2 slipped stitches over',
  kwise: 'as if to knit',
  pwise: 'as if to purl',
  wyib: 'with the yarn at the back',
  wyif: 'with the yarn at the front',
  cn: 'cable needle',
  dpn: 'double-pointed needle',
  dpns: 'double-pointed needles',
  lh: 'left hand',
  rh: 'right hand',
  patt: 'in pattern: each stitch as it has been worked so far',
  'st st': 'stocking stitch: knit on the right side, purl on the wrong side',
  'g st': 'garter stitch: knit every row; in the round, knit and purl by turns',
  'inc’d': 'increased',
  'dec’d': 'decreased',
  beg: 'beginning',
  cont: 'continue',
  foll: 'following',
  prev: 'previous',
  rem: 'remaining',
  alt: 'alternate',
  est: 'established',
  approx: 'about',
  mc: 'main colour',
  cc: 'contrasting colour'
};

/** Stitches that are offered, the commoner first. The core tells what each takes and makes. */
export const OFFERED_STITCHES: readonly string[] = [
  ...['k2tog', 'ssk', 'p2tog', 'ssp', 'yo', 'm1', 'm1L', 'm1R', 'm1p', 'kfb', 'pfb', 'k2tog tbl', 'p2tog tbl', 'skp'],
  ...['k3tog', 'sssk', 'sk2p', 's2kp2', 'p3tog', 'sssp', 's2pp2', 'k3tog tbl', 'sl', 'sl1k', 'sl1p', 'ktbl', 'ptbl'],
  ...['k1b', 'p1b', 'LLI', 'RLI', 'RT', 'LT', '1/1 RC', '1/1 LC', '2/2 RC', '2/2 LC', '3/3 RC', '3/3 LC', '2/1 RPC'],
  ...['2/1 LPC', '2/2 RPC', '2/2 LPC', 'C4F', 'C4B', 'C6F', 'C6B', 'T3F', 'T3B', 'MB', 'DS', 'kfbf', 'k-p-k', 'k-yo-k'],
  ...['yo2', 'yfwd', 'yrn', 'yon', 'm2', 'inc', 'dec', 'brk', 'brp', 'sl1yo', 'yb', 'yf', 'pnso', 'drop st'],
  ...['pick up wrap']
];

/** Words for the hands that are offered among the stitches. */
export const OFFERED_HANDS: readonly string[] = ['pm', 'sm', 'rm', 'turn', 'w&t'];

/** Headings that are offered, in the order in which pieces are worked. */
export const HEADINGS: readonly string[] = [
  ...['Cuff', 'Leg', 'Heel flap', 'Heel turn', 'Gusset', 'Foot', 'Toe', 'Brim', 'Body', 'Crown', 'Hand'],
  ...['Thumb gusset', 'Thumb', 'Fingers', 'Sleeve', 'Hem', 'Finishing']
];
